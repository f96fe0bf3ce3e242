/// A share of parts, with its interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// Parts that did.
    pub count: u64,
    /// Parts drawn.
    pub draws: u64,
    /// Lower end of the interval of 95 %.
    pub low: f64,
    /// Upper end.
    pub high: f64,
}

/// Standard deviations that hold 95 % of a normal distribution.
const Z: f64 = 1.959_963_984_540_054;

impl Share {
    /// A share of `count` of `draws` with the interval in which the true share lies with 95 % confidence.
    ///
    /// **Valid for** independent draws; it says how well the number of draws tells the share, and nothing of how well the
    /// distributions describe the parts.
    ///
    /// **Source**: the score interval of E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209-212.
    pub fn of(count: u64, draws: u64) -> Self {
        let n = draws.max(1) as f64;
        let p = count as f64 / n;
        let z2 = Z * Z;
        let middle = (p + z2 / (2.0 * n)) / (1.0 + z2 / n);
        let half = Z / (1.0 + z2 / n) * (p * (1.0 - p) / n + z2 / (4.0 * n * n)).sqrt();
        let low = if count == 0 { 0.0 } else { (middle - half).max(0.0) };
        let high = if count == draws { 1.0 } else { (middle + half).min(1.0) };
        Self { count, draws, low, high }
    }

    /// The share itself, 0 to 1.
    pub fn share(&self) -> f64 {
        self.count as f64 / self.draws.max(1) as f64
    }
}
