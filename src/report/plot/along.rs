//! Labels along a level line, placed where the fewest other lines run through them.

use super::scene::{Area, Point, at, text_area};

/// What a label has to keep clear of.
#[derive(Clone, Debug, Default)]
pub(super) struct Obstacles {
    /// Never covered: texts and markers.
    pub(super) solid: Vec<Area>,
    /// Covered only where nothing better is left: curves, poles and level lines.
    pub(super) lines: Vec<Vec<Point>>,
}

impl Obstacles {
    fn lines_through(&self, area: &Area) -> usize {
        self.lines.iter().filter(|line| line.windows(2).any(|w| area.is_crossed_by(w[0], w[1]))).count()
    }
}

/// A label for the line at height `y`.
#[derive(Clone, Copy, Debug)]
pub(super) struct Wanted {
    pub(super) y: f64,
    pub(super) width: f64,
    pub(super) size: f64,
}

/// A label in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Placed {
    /// Left end of the baseline.
    pub(super) start: Point,
    /// How many lines run through the label.
    pub(super) crossings: usize,
}

/// Space between a line and the baseline of a label above it: the descenders and as much again as below the line.
const ABOVE: f64 = 8.5;
/// Space between a line and the capitals of a label below it.
const BELOW: f64 = 5.0;
/// Step in which places along the line are tried.
const STEP: f64 = 6.0;
/// Space kept free between the label and other texts and markers.
const AROUND: f64 = 6.0;
/// Space kept free between the label and lines: beside it, and above and below it.
const LINE_SPACE: (f64, f64) = (7.0, 1.0);

/// The best place inside one of `rooms`; none if every place is taken or too small.
///
/// Fewest lines through the label first, then above the line rather than below, then as far right as possible.
pub(super) fn place(wanted: Wanted, rooms: &[Area], obstacles: &Obstacles) -> Option<Placed> {
    let above = wanted.y - ABOVE;
    let below = wanted.y + BELOW + super::font::CAP_HEIGHT * wanted.size;
    let mut best: Option<((usize, usize), Point)> = None;
    for room in rooms.iter().rev() {
        let places = ((room.right - room.left - wanted.width) / STEP).floor();
        for i in 0..=(places.max(-1.0) as i64) {
            let x = room.right - wanted.width - i as f64 * STEP;
            for (side, baseline) in [above, below].into_iter().enumerate() {
                let area = text_area(at(x, baseline), wanted.width, wanted.size);
                if !room.contains(&area) || obstacles.solid.iter().any(|solid| solid.overlaps(&area.grown(AROUND))) {
                    continue;
                }
                let cost = (obstacles.lines_through(&with_line_space(area)), side);
                if best.is_none_or(|(least, _)| cost < least) {
                    best = Some((cost, at(x, baseline)));
                }
            }
        }
    }
    best.map(|((crossings, _), start)| Placed { start, crossings })
}

fn with_line_space(area: Area) -> Area {
    let (beside, over) = LINE_SPACE;
    Area { left: area.left - beside, right: area.right + beside, top: area.top - over, bottom: area.bottom + over }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const ROOM: Area = Area { left: 80.0, top: 150.0, right: 800.0, bottom: 560.0 };

    proptest! {
        #[test]
        fn a_label_never_covers_a_text_or_leaves_its_room(
            y in 120.0..600.0_f64,
            width in 20.0..900.0_f64,
            solid in prop::collection::vec((80.0..800.0_f64, 150.0..560.0_f64), 0..12),
        ) {
            let solid: Vec<Area> =
                solid.into_iter().map(|(x, y)| Area { left: x, top: y, right: x + 80.0, bottom: y + 25.0 }).collect();
            let obstacles = Obstacles { solid, lines: vec![vec![at(80.0, 300.0), at(800.0, 310.0)]] };
            if let Some(Placed { start, .. }) = place(Wanted { y, width, size: 20.0 }, &[ROOM], &obstacles) {
                let area = text_area(start, width, 20.0);
                prop_assert!(ROOM.contains(&area));
                prop_assert!(obstacles.solid.iter().all(|solid| !solid.overlaps(&area)));
            }
        }
    }

    #[test]
    fn a_label_dodges_a_curve_by_going_to_the_other_side_or_along_the_line() {
        let steep = vec![at(600.0, 150.0), at(720.0, 400.0)];
        let obstacles = Obstacles { solid: vec![], lines: vec![steep.clone()] };
        let placed = place(Wanted { y: 300.0, width: 150.0, size: 20.0 }, &[ROOM], &obstacles).unwrap();
        assert_eq!(placed.crossings, 0);
        assert!(!text_area(placed.start, 150.0, 20.0).is_crossed_by(steep[0], steep[1]));
    }

    #[test]
    fn a_label_wider_than_its_room_has_no_place() {
        assert_eq!(place(Wanted { y: 300.0, width: 721.0, size: 20.0 }, &[ROOM], &Obstacles::default()), None);
    }
}
