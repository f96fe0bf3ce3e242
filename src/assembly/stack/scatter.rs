use crate::quantity::Length;
use uom::si::length::meter;

/// Cells of the grid on which a distribution is kept.
const CELLS: usize = 2000;

/// Distribution of the sum of sizes that are each evenly spread between their limits, without random numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Scatter {
    middle: f64,
    half: f64,
    /// Share below each point of the grid from `middle - half` to `middle + half`; empty where nothing scatters.
    below: Vec<f64>,
}

impl Scatter {
    /// The distribution about `middle`, m, of sizes spread over `widths`, m.
    ///
    /// Adding a size of width w turns the share below x into its mean over x ± w/2. The integral of the share is kept on the
    /// grid and interpolated by cubics that have the share as their slope.
    pub(super) fn of(middle: f64, widths: &[f64]) -> Self {
        let half: f64 = widths.iter().sum::<f64>() / 2.0;
        let mut widths: Vec<f64> = widths.iter().copied().filter(|width| *width > 0.0).collect();
        widths.sort_by(|a, b| b.total_cmp(a));
        let Some((widest, rest)) = widths.split_first() else { return Self { middle, half: 0.0, below: Vec::new() } };
        let step = 2.0 * half / CELLS as f64;
        let place = |cell: usize| cell as f64 * step - half;
        let mut below: Vec<f64> = (0..=CELLS).map(|cell| (place(cell) / widest + 0.5).clamp(0.0, 1.0)).collect();
        for width in rest {
            let integral = Integral::of(&below, step, half);
            below = (0..=CELLS)
                .map(|cell| (integral.at(place(cell) + width / 2.0) - integral.at(place(cell) - width / 2.0)) / width)
                .map(|share| share.clamp(0.0, 1.0))
                .collect();
        }
        Self { middle, half, below }
    }

    /// Share of all that lies below `value`.
    pub fn share_below(&self, value: Length) -> f64 {
        let x = value.get::<meter>() - self.middle;
        if self.below.is_empty() || x.abs() >= self.half {
            return if x > 0.0 { 1.0 } else { 0.0 };
        }
        let at = (x + self.half) / (2.0 * self.half) * CELLS as f64;
        let cell = (at as usize).min(CELLS - 1);
        self.below[cell] + (at - cell as f64) * (self.below[cell + 1] - self.below[cell])
    }

    /// The value below which this share of all lies.
    pub fn at_share(&self, share: f64) -> Length {
        let Some(above) = self.below.iter().position(|below| *below >= share) else {
            return Length::new::<meter>(self.middle + self.half);
        };
        let step = 2.0 * self.half / CELLS as f64;
        let within = match above.checked_sub(1).map(|before| (self.below[before], self.below[above])) {
            Some((low, high)) if high > low => (share - low) / (high - low) - 1.0,
            _ => 0.0,
        };
        Length::new::<meter>(self.middle - self.half + (above as f64 + within) * step)
    }
}

/// The integral of a share over a grid, as cubics between its points.
struct Integral<'a> {
    share: &'a [f64],
    total: Vec<f64>,
    step: f64,
    half: f64,
}

impl<'a> Integral<'a> {
    fn of(share: &'a [f64], step: f64, half: f64) -> Self {
        let mut total = vec![0.0];
        for pair in share.windows(2) {
            let before = total[total.len() - 1];
            total.push(before + step * (pair[0] + pair[1]) / 2.0);
        }
        Self { share, total, step, half }
    }

    fn at(&self, x: f64) -> f64 {
        if x <= -self.half {
            return 0.0;
        }
        if x >= self.half {
            return self.total[self.total.len() - 1] + x - self.half;
        }
        let at = (x + self.half) / self.step;
        let cell = (at as usize).min(self.total.len() - 2);
        let t = at - cell as f64;
        let (from, to) = (self.total[cell], self.total[cell + 1]);
        let (slope_from, slope_to) = (self.step * self.share[cell], self.step * self.share[cell + 1]);
        let (square, cube) = (t * t, t * t * t);
        from * (2.0 * cube - 3.0 * square + 1.0)
            + slope_from * (cube - 2.0 * square + t)
            + to * (3.0 * square - 2.0 * cube)
            + slope_to * (cube - square)
    }
}
