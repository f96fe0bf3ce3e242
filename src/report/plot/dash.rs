//! Dash patterns, so that lines keep apart without colour.

use super::scene::{Point, at};

/// Lengths in px: drawn, left out, drawn, left out ...
pub(super) type Pattern = &'static [f64];

pub(super) const SHORT: Pattern = &[5.0, 4.0];
pub(super) const LONG: Pattern = &[17.0, 6.0];
pub(super) const DASH_DOT: Pattern = &[11.0, 4.0, 2.5, 4.0];

/// The drawn pieces of `line`, the pattern running on around its corners.
pub(super) fn pieces(line: &[Point], pattern: Pattern) -> Vec<Vec<Point>> {
    let mut pieces = Vec::new();
    let mut index = 0;
    let mut left = pattern[0];
    let mut piece: Vec<Point> = line.first().copied().into_iter().collect();
    for ends in line.windows(2) {
        let (mut from, to) = (ends[0], ends[1]);
        let mut length = (to.x - from.x).hypot(to.y - from.y);
        while length > left {
            from = at(from.x + (to.x - from.x) * left / length, from.y + (to.y - from.y) * left / length);
            length -= left;
            if index % 2 == 0 {
                piece.push(from);
                pieces.push(std::mem::take(&mut piece));
            } else {
                piece = vec![from];
            }
            index = (index + 1) % pattern.len();
            left = pattern[index];
        }
        left -= length;
        if index % 2 == 0 {
            piece.push(to);
        }
    }
    if piece.len() > 1 {
        pieces.push(piece);
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(line: &[Point]) -> f64 {
        line.windows(2).map(|w| (w[1].x - w[0].x).hypot(w[1].y - w[0].y)).sum()
    }

    #[test]
    fn dashes_have_their_length_around_a_corner() {
        let line = [at(0.0, 0.0), at(30.0, 0.0), at(30.0, 60.0)];
        let pieces = pieces(&line, LONG);
        assert_eq!(pieces.len(), 4);
        for piece in &pieces {
            assert!((length(piece) - 17.0).abs() < 1e-9, "{piece:?}");
        }
        assert_eq!(pieces[1].len(), 3, "the second dash turns the corner");
    }

    #[test]
    fn a_line_of_no_length_gives_no_endless_loop() {
        assert!(pieces(&[], SHORT).is_empty());
        assert!(pieces(&[at(1.0, 1.0)], SHORT).is_empty());
        assert!(pieces(&[at(1.0, 1.0), at(1.0, 1.0)], SHORT).len() <= 1);
    }
}
