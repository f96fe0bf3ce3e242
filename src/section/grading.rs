//! Lines of a graded mesh.

/// A place near which the elements are small.
#[derive(Clone, Copy, Debug)]
pub(super) struct Focus {
    /// Where it begins, m.
    pub(super) from: f64,
    /// Where it ends, m; the same for a point.
    pub(super) to: f64,
    /// Size of an element there, m.
    pub(super) size: f64,
}

/// Growth of the elements' size with the distance from a focus, along the axis. The pressure on a seat is straight over
/// each edge, so these must be shorter than displacements ask for (chosen by halving all elements).
pub(super) const ALONG: f64 = 0.25;
/// The same across the axis. An element is then up to twice as long as its neighbour; pressure and closing of seats
/// with and without wall differ by 0.003 % from those of a growth of 0.35.
pub(super) const ACROSS: f64 = 0.6;
/// Samples of the wanted size between two fixed lines.
const SAMPLES: usize = 200;

impl Focus {
    /// A point.
    pub(super) fn at(place: f64, size: f64) -> Self {
        Self { from: place, to: place, size }
    }

    fn wanted(&self, place: f64, growth: f64) -> f64 {
        let distance = (self.from - place).max(place - self.to).max(0.0);
        self.size + growth * distance
    }
}

/// Lines through all `fixed` places, which are sorted, and between them as close as the foci want.
///
/// Between two fixed places there are `⌈∫ dx/h(x)⌉` elements, h the wanted size, and each takes the same share of that
/// integral.
pub(super) fn lines(fixed: &[f64], foci: &[Focus], growth: f64) -> Vec<f64> {
    let mut lines: Vec<f64> = fixed.first().copied().into_iter().collect();
    for ends in fixed.windows(2) {
        between((ends[0], ends[1]), foci, growth, &mut lines);
        lines.push(ends[1]);
    }
    lines
}

fn between((from, to): (f64, f64), foci: &[Focus], growth: f64, lines: &mut Vec<f64>) {
    let step = (to - from) / SAMPLES as f64;
    let wanted = |x: f64| foci.iter().map(|focus| focus.wanted(x, growth)).fold(to - from, f64::min);
    let mut sums = vec![0.0];
    for k in 0..SAMPLES {
        let middle = from + (k as f64 + 0.5) * step;
        sums.push(sums[k] + step / wanted(middle));
    }
    let count = sums[SAMPLES].ceil().max(1.0);
    let mut k = 0;
    for line in 1..count as usize {
        let target = sums[SAMPLES] * line as f64 / count;
        while sums[k + 1] < target {
            k += 1;
        }
        lines.push(from + step * (k as f64 + (target - sums[k]) / (sums[k + 1] - sums[k])));
    }
}

/// Sorted places, those closer than `apart` taken as one.
pub(super) fn distinct(mut places: Vec<f64>, apart: f64) -> Vec<f64> {
    places.sort_by(f64::total_cmp);
    places.dedup_by(|b, a| *b - *a <= apart);
    places
}
