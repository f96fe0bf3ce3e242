/// Does the same task for many numbers.
///
/// The results come back in the order of the numbers, so that what is made of them does not depend on who does it.
pub trait Worker {
    /// `task` of 0, 1 and so on up to `count`, in this order.
    fn each<R: Send>(&self, count: usize, task: impl Fn(usize) -> R + Sync + Send) -> Vec<R>;
}

/// One after the other.
#[derive(Clone, Copy, Debug, Default)]
pub struct OneByOne;

impl Worker for OneByOne {
    fn each<R: Send>(&self, count: usize, task: impl Fn(usize) -> R + Sync + Send) -> Vec<R> {
        (0..count).map(task).collect()
    }
}
