//! Backward differences of a list of values at even steps, and the formulas that go on from them.
//!
//! With `∇⁰y` the values and `∇ᵐy` their differences over the last m steps of length h, `Σ_{m≤k} ∇ᵐy/m = h y'` is the
//! backward formula of order k. A share κ of what the value is off from the expected one is added to it, which makes the
//! error smaller by up to a third (L. F. Shampine and M. W. Reichelt, "The MATLAB ODE Suite", SIAM J. Sci. Comput. 18, 1997,
//! section 2: the numerical differentiation formulas, their κ and the change of step, from memory; orders, error and change
//! of step are tested). Conduction decays at real rates, for which all of them are stable at every step.

/// Highest order.
pub(super) const MOST: usize = 4;
/// κ of the order.
const KAPPA: [f64; MOST + 1] = [0.0, -0.1850, -1.0 / 9.0, -0.0823, -0.0415];

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
    /// From values and how much they change in a step.
    pub(super) fn new(values: Vec<f64>, change: Vec<f64>) -> Self {
        let mut lists = vec![vec![0.0; values.len()]; MOST + 3];
        (lists[0], lists[1]) = (values, change);
        Self { order: 1, lists, even: 0 }
    }

    /// The differences of an order; of order zero, the values.
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

/// Shares of the differences of one order (row, from order one) in those of another (column) over steps `factor` times as long.
fn changes(order: usize, factor: f64) -> [[f64; MOST]; MOST] {
    let table = |factor: f64| {
        let mut table = [[0.0; MOST + 1]; MOST + 1];
        table[0] = [1.0; MOST + 1];
        for row in 1..=order {
            let i = row as f64;
            table[row] = std::array::from_fn(|column| table[row - 1][column] * (i - 1.0 - factor * column as f64) / i);
        }
        table
    };
    let (stretched, even) = (table(factor), table(1.0));
    let mut changes = [[0.0; MOST]; MOST];
    for row in 1..=order {
        for column in 1..=order {
            changes[row - 1][column - 1] = (1..=order).map(|inner| stretched[row][inner] * even[inner][column]).sum();
        }
    }
    changes
}

#[cfg(test)]
impl Differences {
    /// From values at even steps, the last of them first.
    pub(super) fn from_past(mut past: Vec<Vec<f64>>) -> Self {
        let order = past.len() - 1;
        for m in 1..=order {
            for row in (m..=order).rev() {
                past[row] = past[row - 1].iter().zip(&past[row]).map(|(later, earlier)| later - earlier).collect();
            }
        }
        past.resize(MOST + 3, vec![0.0; past[0].len()]);
        Self { order, lists: past, even: 0 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `1 + t + … + t^power`.
    fn polynomial(power: usize, t: f64) -> f64 {
        (0..=power).rev().fold(0.0, |sum, _| sum * t + 1.0)
    }

    fn past(power: usize, step: f64) -> Differences {
        Differences::from_past((0..=power).map(|k| vec![polynomial(power, -step * k as f64)]).collect())
    }

    #[test]
    fn a_polynomial_of_the_order_is_followed_exactly() {
        for order in 1..=MOST {
            let (step, mut differences) = (0.25, past(order, 0.25));
            let ahead = differences.ahead();
            assert!((ahead.values[0] - polynomial(order, step)).abs() < 1e-13, "{order}");
            let slope: f64 = (1..=order).map(|power| power as f64 * step.powi(power as i32 - 1)).sum();
            let by_formula = ahead.known[0] + step / divisor(order) * slope;
            assert!((by_formula - polynomial(order, step)).abs() < 1e-13, "{order}: {by_formula}");
            differences.take(vec![0.0]);
            for share in [0.0, 0.3, 1.0] {
                let (found, gained) = (differences.at(share, 1)[0], differences.gained(share, 0)[0]);
                let exact = polynomial(order, share * step);
                assert!((found - exact).abs() < 1e-13 && (gained - exact + 1.0).abs() < 1e-13, "{order} {share}");
            }
        }
    }

    #[test]
    fn other_steps_leave_the_polynomial_as_it_is() {
        for order in 1..=MOST {
            for factor in [0.3, 0.9, 1.0, 2.5] {
                let (mut stretched, exact) = (past(order, 0.1), past(order, 0.1 * factor));
                stretched.stretch(factor);
                for m in 0..=order {
                    let off = stretched.list(m)[0] - exact.list(m)[0];
                    assert!(off.abs() < 1e-13, "order {order}, difference {m}, factor {factor}: off by {off}");
                }
            }
        }
    }

    /// One step of `y' = f(t)` for `t^(k+1)`, whose difference of order k + 1 is the same everywhere, `(k + 1)! h^(k+1)`.
    #[test]
    fn the_error_is_the_stated_share_of_the_next_difference() {
        for order in 1..=MOST {
            let (step, power) = (0.5_f64, order as i32 + 1);
            let values = (0..=order).map(|k| vec![(-step * k as f64).powi(power)]).collect();
            let ahead = Differences::from_past(values).ahead();
            let found = ahead.known[0] + step / divisor(order) * f64::from(power) * step.powi(order as i32);
            let difference = (1..=power).map(f64::from).product::<f64>() * step.powi(power);
            let share = (step.powi(power) - found) / difference;
            let local = error_share(order) / divisor(order);
            assert!((share.abs() - local).abs() < 1e-12, "{order}: {share} and {local}");
        }
    }
}
