//! Which of several seams bear, and how hard.

/// The seams of concentric layers: `g = M p - δ`, where p are the pressures, δ the diametral interferences and g the
/// gaps; M is tridiagonal, one row for each seam from the inside out.
///
/// Wanted are `p ≥ 0`, `g ≥ 0`, `p g = 0`: nothing pulls, nothing overlaps.
pub(super) struct Seams {
    /// Interference given up at a seam for a pressure of one there, m/Pa.
    pub(super) own: Vec<f64>,
    /// What a pressure of one at the seam inside of it gives it in addition, m/Pa; never positive, zero for the first.
    pub(super) from_inside: Vec<f64>,
    /// What a pressure of one at the seam outside of it gives it in addition, m/Pa; never positive, zero for the last.
    pub(super) from_outside: Vec<f64>,
    /// Interference without any pressure, m.
    pub(super) interference: Vec<f64>,
}

impl Seams {
    /// Pressures and gaps of the only state in which nothing pulls and nothing overlaps.
    ///
    /// All seams begin open; each round closes those that overlap and solves for the pressures of the closed ones, until
    /// none overlaps. A pressure never makes its neighbours less tight (M has no positive entry beside the diagonal) and
    /// its energy is positive (M is positive definite once each row is weighed with its circumference), so M and each of
    /// its principal parts has an inverse without negative entries. Let p be the pressures of a round and let some seams with
    /// g < 0 be closed: the new pressures differ by `M⁻¹(-g) ≥ 0`. Pressures only grow from round to round: none falls
    /// below zero, no closed seam has to open again, and as each round closes one seam at least, there are no more rounds
    /// than seams. An open seam is looked at again in every round, so one that a neighbour's pressure closes is closed.
    ///
    /// **Source**: R. Chandrasekaran, "A special case of the complementary pivot problem", Opsearch 7 (1970) 263-268 (from
    /// memory); the argument above is complete in itself.
    pub(super) fn solve(&self) -> (Vec<f64>, Vec<f64>) {
        let seams = self.own.len();
        let mut closed = vec![false; seams];
        let mut pressure = vec![0.0; seams];
        let mut scratch = vec![0.0; seams];
        loop {
            let mut overlaps = false;
            for (seam, closed) in closed.iter_mut().enumerate() {
                if !*closed && self.gap(seam, &pressure) < 0.0 {
                    *closed = true;
                    overlaps = true;
                }
            }
            if !overlaps {
                break;
            }
            self.press(&closed, &mut pressure, &mut scratch);
        }
        let open_gap = |seam: usize| if closed[seam] { 0.0 } else { self.gap(seam, &pressure) };
        let gaps = (0..seams).map(open_gap).collect();
        (pressure, gaps)
    }

    fn gap(&self, seam: usize, pressure: &[f64]) -> f64 {
        let inside = if seam > 0 { self.from_inside[seam] * pressure[seam - 1] } else { 0.0 };
        let outside = pressure.get(seam + 1).map_or(0.0, |next| self.from_outside[seam] * next);
        self.own[seam] * pressure[seam] + inside + outside - self.interference[seam]
    }

    /// Pressures of the closed seams, the others at zero: elimination from the inside out, then back.
    ///
    /// The pivots are positive for a matrix of this kind, so nothing needs to be exchanged.
    fn press(&self, closed: &[bool], pressure: &mut [f64], ratio: &mut [f64]) {
        let (mut before, mut ratio_before) = (0.0, 0.0);
        for seam in 0..closed.len() {
            if closed[seam] {
                let pivot = self.own[seam] - self.from_inside[seam] * ratio_before;
                ratio[seam] = self.from_outside[seam] / pivot;
                pressure[seam] = (self.interference[seam] - self.from_inside[seam] * before) / pivot;
            } else {
                (ratio[seam], pressure[seam]) = (0.0, 0.0);
            }
            (before, ratio_before) = (pressure[seam], ratio[seam]);
        }
        let mut outer = 0.0;
        for seam in (0..closed.len()).rev() {
            // Never below zero but for rounding, see `solve`.
            pressure[seam] = (pressure[seam] - ratio[seam] * outer).max(0.0);
            outer = pressure[seam];
        }
    }
}
