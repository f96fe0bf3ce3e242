//! The order in which the screws of a cover are tightened: opposite one after the other, from the middle outwards.

use super::place::Place;
use uom::si::length::meter;

/// Distances that differ by less than this share of the pattern are equal, so that noise does not choose between them.
const GRID: f64 = 1e-6;
/// Width of a ring of screws that count as equally far out, as a share of the farthest.
const SHELL: f64 = 0.2;
/// Two screws are opposite when the middle between them is no farther from the centre than this share of half their own
/// distance from it: three screws on a circle just pass.
const OPPOSITE: f64 = 1.05;

/// One screw, or two that stand opposite each other.
struct Team {
    members: Vec<usize>,
    /// Mean distance from the centre, in steps of the grid.
    out: i64,
}

struct Pattern {
    /// Places about their centre.
    points: Vec<(f64, f64)>,
    step: f64,
}

/// Numbers of the places, from 0, in the order in which to tighten: each once.
///
/// Screws are paired with the one opposite through the centre of the pattern. Pairs nearer the centre come first; among
/// those equally far out, always the pair that is farthest from all that are tight, so that the cover is drawn down evenly.
/// On a circle of an even number every second screw stands exactly opposite the one before it; of an odd number, within
/// half a division. Five on a circle give the star 1, 3, 5, 2, 4.
///
/// **Source**: common practice of cover and cylinder-head tightening, no published source; ASME PCC-1 has the same for
/// flanges (from memory).
pub fn opposite_first(places: &[Place]) -> Vec<usize> {
    let pattern = Pattern::about_centre(places);
    let mut left = pattern.teams();
    let mut order: Vec<usize> = Vec::with_capacity(places.len());
    // Members of the team before, at the end of the order.
    let mut before = 0;
    for mut shell in shells(&mut left, pattern.shell()) {
        let mut clear: Vec<i64> = shell.iter().map(|team| pattern.clear(team, &order)).collect();
        let mut first = true;
        while !shell.is_empty() {
            let next = pattern.next(&shell, &clear, &order[order.len() - before..]);
            let team = shell.remove(next);
            clear.remove(next);
            let lead = order.last().map_or(team.members[0], |last| pattern.lead(&team, *last));
            order.push(lead);
            order.extend(team.members.iter().filter(|member| **member != lead));
            before = team.members.len();
            // Within a ring of screws only those of the ring count.
            for (known, left) in clear.iter_mut().zip(&shell) {
                let now = pattern.clear(left, &team.members);
                *known = if first { now } else { now.min(*known) };
            }
            first = false;
        }
    }
    order
}

/// Teams ring by ring, from the middle outwards; each ring begins with its nearest.
fn shells(teams: &mut Vec<Team>, width: i64) -> Vec<Vec<Team>> {
    teams.sort_by_key(|team| (team.out, team.members[0]));
    let mut rings: Vec<Vec<Team>> = Vec::new();
    for team in teams.drain(..) {
        match rings.last_mut().filter(|ring| team.out - ring[0].out <= width) {
            Some(ring) => ring.push(team),
            None => rings.push(vec![team]),
        }
    }
    for ring in &mut rings {
        ring.sort_by_key(|team| team.members[0]);
    }
    rings
}

impl Pattern {
    fn about_centre(places: &[Place]) -> Self {
        let points: Vec<(f64, f64)> =
            places.iter().map(|place| (place.x.get::<meter>(), place.y.get::<meter>())).collect();
        let count = points.len().max(1) as f64;
        let sum = points.iter().fold((0.0, 0.0), |sum, point| (sum.0 + point.0, sum.1 + point.1));
        let centre = (sum.0 / count, sum.1 / count);
        let points: Vec<(f64, f64)> = points.iter().map(|point| (point.0 - centre.0, point.1 - centre.1)).collect();
        let farthest = points.iter().map(|point| point.0.hypot(point.1)).fold(0.0, f64::max);
        Self { points, step: if farthest > 0.0 { GRID * farthest } else { 1.0 } }
    }

    fn steps(&self, metres: f64) -> i64 {
        (metres / self.step).round() as i64
    }

    fn shell(&self) -> i64 {
        (SHELL / GRID) as i64
    }

    fn out(&self, number: usize) -> f64 {
        let (x, y) = self.points[number];
        x.hypot(y)
    }

    fn apart(&self, one: usize, other: usize) -> i64 {
        let (a, b) = (self.points[one], self.points[other]);
        self.steps((a.0 - b.0).hypot(a.1 - b.1))
    }

    /// Pairs that stand most nearly opposite, and what is left alone.
    fn teams(&self) -> Vec<Team> {
        let count = self.points.len();
        let mut pairs: Vec<(i64, usize, usize)> = Vec::new();
        for one in 0..count {
            for other in one + 1..count {
                let (a, b) = (self.points[one], self.points[other]);
                let off = (a.0 + b.0).hypot(a.1 + b.1);
                if off <= OPPOSITE * 0.5 * (self.out(one) + self.out(other)) {
                    pairs.push((self.steps(off), one, other));
                }
            }
        }
        pairs.sort_unstable();
        let mut free = vec![true; count];
        let mut teams = Vec::new();
        for (_, one, other) in pairs {
            if free[one] && free[other] {
                (free[one], free[other]) = (false, false);
                let out = self.steps(0.5 * (self.out(one) + self.out(other)));
                teams.push(Team { members: vec![one, other], out });
            }
        }
        let alone = (0..count).filter(|number| free[*number]);
        teams.extend(alone.map(|number| Team { members: vec![number], out: self.steps(self.out(number)) }));
        teams
    }

    /// Which team to tighten next: far from all that are tight, then a quarter turn from the team before, then far from the
    /// last screw, then the first as numbered.
    /// `clear` is the distance of each team from all that are tight, `before` the team before.
    fn next(&self, teams: &[Team], clear: &[i64], before: &[usize]) -> usize {
        let away = |team: &Team| before.last().map_or(0, |last| self.apart(self.lead(team, *last), *last));
        let merit = |(number, team): (usize, &Team)| {
            ((clear[number], self.clear(team, before), away(team), std::cmp::Reverse(number)), number)
        };
        teams.iter().enumerate().map(merit).max().map_or(0, |(_, number)| number)
    }

    /// Least distance of a team from some screws.
    fn clear(&self, team: &Team, from: &[usize]) -> i64 {
        let each = team.members.iter().flat_map(|member| from.iter().map(|other| self.apart(*member, *other)));
        each.min().unwrap_or_default()
    }

    /// The member to begin with: the one farther from the last that was tightened.
    fn lead(&self, team: &Team, last: usize) -> usize {
        let key = |member: &usize| (self.apart(*member, last), std::cmp::Reverse(*member));
        team.members.iter().copied().max_by_key(key).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assembly::screws::circle;
    use crate::quantity::Length;
    use uom::si::length::millimeter;

    fn on_a_circle(count: usize) -> Vec<usize> {
        let places = circle(count, Length::new::<millimeter>(100.0), 0.0).unwrap();
        opposite_first(&places).into_iter().map(|number| number + 1).collect()
    }

    #[test]
    fn small_circles_have_the_stars_that_every_fitter_knows() {
        assert_eq!(on_a_circle(1), [1]);
        assert_eq!(on_a_circle(2), [1, 2]);
        assert_eq!(on_a_circle(4), [1, 3, 2, 4]);
        assert_eq!(on_a_circle(5), [1, 3, 5, 2, 4]);
        assert_eq!(on_a_circle(6), [1, 4, 2, 5, 3, 6]);
        assert_eq!(on_a_circle(8), [1, 5, 3, 7, 2, 6, 4, 8]);
    }

    #[test]
    fn a_long_cover_is_drawn_down_from_the_middle_outwards() {
        let at = |(x, y): (f64, f64)| Place { x: Length::new::<millimeter>(x), y: Length::new::<millimeter>(y) };
        let rows = [-30.0, 30.0].map(|y| [-100.0, -50.0, 0.0, 50.0, 100.0].map(|x| (x, y))).concat();
        let order = opposite_first(&rows.iter().copied().map(at).collect::<Vec<_>>());
        assert_eq!(order[..2], [2, 7]);
        let mut ends = order[6..].to_vec();
        ends.sort_unstable();
        assert_eq!(ends, [0, 4, 5, 9]);
    }
}
