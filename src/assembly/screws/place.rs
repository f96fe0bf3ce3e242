use super::error::ScrewsError;
use crate::quantity::{Length, within};
use std::f64::consts::TAU;
use uom::si::length::{meter, millimeter};

/// Screws on one circle.
const COUNT: (f64, f64) = (1.0, 200.0);

/// Diameter of a circle of screws, mm.
const CIRCLE_MM: (f64, f64) = (1.0, 10_000.0);

/// Where a screw sits in the plane of the cover: x to the right, y upwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// To the right.
    pub x: Length,
    /// Upwards.
    pub y: Length,
}

impl Place {
    /// Distance to another place.
    pub fn distance(&self, other: &Self) -> Length {
        let (dx, dy) = ((self.x - other.x).get::<meter>(), (self.y - other.y).get::<meter>());
        Length::new::<meter>(dx.hypot(dy))
    }
}

/// Places of `count` screws on a circle about the origin, clockwise; the first stands `turned` degrees clockwise of the top.
///
/// # Errors
/// [`ScrewsError::Value`] for none or more than 200 screws, or a circle that is none.
pub fn circle(count: usize, diameter: Length, turned: f64) -> Result<Vec<Place>, ScrewsError> {
    within("number of screws", count as f64, COUNT, "screws")?;
    within("diameter of the circle of screws", diameter.get::<millimeter>(), CIRCLE_MM, "mm")?;
    within("turn of the first screw", turned, (-360.0, 360.0), "°")?;
    let radius = diameter / 2.0;
    let place = |number: usize| {
        let angle = turned.to_radians() + TAU * number as f64 / count as f64;
        Place { x: radius * angle.sin(), y: radius * angle.cos() }
    };
    Ok((0..count).map(place).collect())
}

/// The two places that are nearest to each other over what they need, as their numbers from 0, their distance, and what
/// they need; none where no two are closer than they need. `heads` are the diameters that must stand beside each other.
///
/// **Arguments**: `places` and `heads` of equal length; a place without a head in the slice is passed over.
pub fn nearest_pair(places: &[Place], heads: &[Length]) -> Option<(usize, usize, Length, Length)> {
    let mut worst: Option<(f64, (usize, usize, Length, Length))> = None;
    for (first, (place, head)) in places.iter().zip(heads).enumerate() {
        for (second, (other, other_head)) in places.iter().zip(heads).enumerate().skip(first + 1) {
            let (distance, needed) = (place.distance(other), (*head + *other_head) / 2.0);
            let short = (needed - distance).get::<meter>();
            if short > 0.0 && worst.is_none_or(|(known, _)| short > known) {
                worst = Some((short, (first, second, distance, needed)));
            }
        }
    }
    worst.map(|(_, pair)| pair)
}
