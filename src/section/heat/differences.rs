//! Backward differences of a list of values at even steps, and the formulas that go on from them.
//!
//! With `∇⁰y` the values and `∇ᵐy` their differences over the last m steps of length h, `Σ_{m≤k} ∇ᵐy/m = h y'` is the
//! backward formula of order k. Of order 1 to 4 a share κ of the step from the predicted value is taken away, which makes the error
//! smaller by up to a third and leaves what decays decaying (L. F. Shampine and M. W. Reichelt, "The MATLAB ODE suite", SIAM
//! J. Sci. Comput. 18, 1997, section 2: the numerical differentiation formulas, κ of table 1 and the change of step by
//! equation 8, both from memory; order and change of step are tested here). Conduction has real decay rates, for which all of them are
//! stable at every step.

/// Highest order.
pub(super) const MOST: usize = 4;
/// κ of the order.
const KAPPA: [f64; 6] = [0.0, -0.1850, -1.0 / 9.0, -0.0823, -0.0415, 0.0];

/// `1 + 1/2 + … + 1/order`.
fn gamma(order: usize) -> f64 {
    (1..=order).map(|m| 1.0 / m as f64).sum()
}

/// Steps divided by it are the share in the matrix, `(1 - κ) γ`.
pub(super) fn divisor(order: usize) -> f64 {
    (1.0 - KAPPA[order]) * gamma(order)
}

/// Error of a step as a share of the next difference.
pub(super) fn error_share(order: usize) -> f64 {
    KAPPA[order] * gamma(order) + 1.0 / (order as f64 + 1.0)
}

/// Values at the end of the last step and their differences over steps of the same length.
#[derive(Clone, Debug)]
pub(super) struct Differences {
    pub(super) order: usize,
    lists: Vec<Vec<f64>>,
    /// Steps since length or order changed.
    pub(super) even: usize,
}

/// The end of the next step.
#[derive(Clone, Debug)]
pub(super) struct Ahead {
    /// What the differences expect.
    pub(super) values: Vec<f64>,
    /// The formula of the order is `value - known = step/divisor · slope`.
    pub(super) known: Vec<f64>,
}

impl Differences {
    /// Values and how much they change in a step.
    pub(super) fn new(values: Vec<f64>, change: Vec<f64>) -> Self {
        let mut lists = vec![vec![0.0; values.len()]; MOST + 3];
        (lists[0], lists[1]) = (values, change);
        Self { order: 1, lists, even: 0 }
    }

    pub(super) fn list(&self, number: usize) -> &[f64] {
        &self.lists[number]
    }

    pub(super) fn ahead(&self) -> Ahead {
        let (mut values, mut known) = (self.lists[0].clone(), self.lists[0].clone());
        for m in 1..=self.order {
            let share = 1.0 - gamma(m) / divisor(self.order);
            for ((value, known), list) in values.iter_mut().zip(&mut known).zip(&self.lists[m]) {
                *value += list;
                *known += share * list;
            }
        }
        Ahead { values, known }
    }

    /// Takes a step that ends `off` beyond the values that were expected.
    pub(super) fn take(&mut self, off: Vec<f64>) {
        let order = self.order;
        let mut beyond = std::mem::replace(&mut self.lists[order + 1], off);
        beyond.iter_mut().zip(&self.lists[order + 1]).for_each(|(beyond, off)| *beyond = off - *beyond);
        self.lists[order + 2] = beyond;
        for m in (0..=order).rev() {
            let (low, high) = self.lists.split_at_mut(m + 1);
            low[m].iter_mut().zip(&high[0]).for_each(|(value, next)| *value += next);
        }
        self.even += 1;
    }

    /// Goes on with steps `factor` times as long: the same polynomial, read at other places.
    pub(super) fn stretch(&mut self, factor: f64) {
        let change = changes(self.order, factor);
        // A difference over longer steps holds those of its own order and of higher ones only, which are still the old ones.
        for m in 1..=self.order {
            let (low, high) = self.lists.split_at_mut(m + 1);
            let list = &mut low[m];
            list.iter_mut().for_each(|value| *value *= change[m - 1][m - 1]);
            for (other, high) in (m..self.order).zip(high) {
                let share = change[other][m - 1];
                list.iter_mut().zip(high).for_each(|(value, high)| *value += share * *high);
            }
        }
        self.even = 0;
    }

    /// The first `count` values of the polynomial through the last steps, at a share of the last step.
    pub(super) fn at(&self, share: f64, count: usize) -> Vec<f64> {
        let place = share - 1.0;
        let mut values = self.lists[0][..count].to_vec();
        let mut weight = 1.0;
        for m in 1..=self.order {
            weight *= (place + m as f64 - 1.0) / m as f64;
            values.iter_mut().zip(&self.lists[m]).for_each(|(value, list)| *value += weight * list);
        }
        values
    }

    /// What the values of a tail, from `first` on, gained in the last step up to a share of it.
    pub(super) fn gained(&self, share: f64, first: usize) -> Vec<f64> {
        let (mut gained, mut weight) = (self.lists[1][first..].to_vec(), 1.0);
        for m in 1..=self.order {
            weight *= (share + m as f64 - 2.0) / m as f64;
            gained.iter_mut().zip(&self.lists[m][first..]).for_each(|(value, list)| *value += weight * list);
        }
        gained
    }
}

/// Shares of the differences of order `first index + 1` in those over steps `factor` times as long.
fn changes(order: usize, factor: f64) -> [[f64; MOST]; MOST] {
    let table = |factor: f64| {
        let mut table = [[0.0; MOST + 1]; MOST + 1];
        table[0] = [1.0; MOST + 1];
        for row in 1..=order {
            for column in 1..=order {
                let (i, j) = (row as f64, column as f64);
                table[row][column] = table[row - 1][column] * (i - 1.0 - factor * j) / i;
            }
        }
        table
    };
    let (stretched, even) = (table(factor), table(1.0));
    let mut changes = [[0.0; MOST]; MOST];
    for row in 1..=order {
        for column in 1..=order {
            changes[row - 1][column - 1] =
                (1..=order).map(|inner| stretched[row][inner] * even[inner][column]).sum();
        }
    }
    changes
}
