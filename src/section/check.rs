//! The one place where a section is checked.

use super::error::SectionError;
use super::geometry::{Back, Elastic, Housing, Liner, RingSection, Seat, Section, Shaft, Step, Support};
use super::outline::{Arc, Cut, OuterStep, Outline, Outlines, Rear, Rest};
use crate::quantity::{Length, positive, within};
use uom::si::length::meter;
use uom::si::pressure::pascal;

/// Largest Poisson ratio for which elements of full integration are trusted.
const LARGEST_POISSON: f64 = 0.49;
/// Largest size of a section, m; the largest nominal size of ISO 286-1 is 3.15 m.
const LARGEST_SIZE: f64 = 10.0;
/// Sizes are rounded to this, m, so that two lines of a mesh are either one or far enough apart to divide by.
const STEP: f64 = 1e-7;
/// Least share of a diameter that a wall must have.
const LEAST_WALL: f64 = 1e-3;
/// Least share of a boss's length on either side of its step.
const LEAST_STEP: f64 = 0.01;
/// Least share of the ring's width along which ring and seat must face one another.
const LEAST_CONTACT: f64 = 0.1;
/// Least share of the ring's wall that must be left under a groove.
const LEAST_UNDER_GROOVE: f64 = 0.2;

/// The outlines of a section, or why there is none.
pub(super) fn outlines(section: &Section) -> Result<Outlines, SectionError> {
    let in_housing = matches!(section.seat, Seat::Housing(_));
    let ring = ring(&section.ring, in_housing)?;
    let touching = if in_housing { ring.outer } else { ring.inner };
    let liner = section.liner.map(|liner| self::liner(&liner, touching, ring.front, in_housing)).transpose()?;
    let touching = liner.as_ref().map_or(touching, |liner| if in_housing { liner.outer } else { liner.inner });
    let seat = match &section.seat {
        Seat::Housing(housing) => self::housing(housing, touching, ring.front)?,
        Seat::Shaft(shaft) => self::shaft(shaft, touching, ring.front)?,
    };
    let mut bodies = vec![ring];
    bodies.extend(liner);
    bodies.push(seat);
    let last = bodies.len() - 1;
    if !in_housing {
        bodies.reverse();
    }
    let (ring, seat) = if in_housing { (0, last) } else { (last, 0) };
    let rest = rest(section.support, &bodies[seat])?;
    // A liner lies next to the seat: last of the contacts in a housing, first on a shaft.
    let seam = if in_housing { last.saturating_sub(1) } else { 0 };
    let bonded = section.liner.filter(|liner| liner.bonded).map(|_| seam);
    let outlines = Outlines { bodies, ring, seat, rest, bonded };
    check_contacts(&outlines)?;
    Ok(outlines)
}

fn check_contacts(outlines: &Outlines) -> Result<(), SectionError> {
    let width = outlines.bodies[outlines.ring].front;
    for k in 0..outlines.bodies.len() - 1 {
        let (from, to) = outlines.contact(k);
        if to - from < LEAST_CONTACT * width {
            return Err(SectionError::NoContact { length_mm: (to - from).max(0.0) * 1e3, width_mm: width * 1e3 });
        }
    }
    Ok(())
}

pub(super) fn rest(support: Support, seat: &Outline) -> Result<Rest, SectionError> {
    Ok(match support {
        Support::Free => Rest::Circle,
        Support::Front => Rest::Front,
        Support::Back { opening } => {
            let opening = opening.map(|opening| size("opening of the support", opening)).transpose()?;
            let from = opening.map_or(seat.inner, |opening| (opening / 2.0).max(seat.inner));
            wall("part that rests on the support", 2.0 * from, 2.0 * seat.outer_at_back())?;
            Rest::Back { from }
        }
    })
}

fn ring(ring: &RingSection, in_housing: bool) -> Result<Outline, SectionError> {
    let width = size("width of the ring", ring.width)?;
    let (inner, outer) =
        wall("ring", size("bore of the ring", ring.bore)?, size("outside of the ring", ring.outside)?)?;
    let deepest = (outer - inner) * (1.0 - LEAST_UNDER_GROOVE);
    let back = bounded("chamfer at the back", ring.chamfers.back, (0.0, deepest))?;
    let front = bounded("chamfer at the front", ring.chamfers.front, (0.0, deepest))?;
    if back + front > (1.0 - LEAST_CONTACT) * width {
        let (back_mm, front_mm, width_mm) = (back * 1e3, front * 1e3, width * 1e3);
        return Err(SectionError::ChamferTooWide { back_mm, front_mm, width_mm });
    }
    let seat = Cut { back, front, arc: None };
    let free = Cut { back: 0.0, front: 0.0, arc: arc(ring, width, outer - inner, back.max(front))? };
    let (inner_cut, outer_cut) = if in_housing { (free, seat) } else { (seat, free) };
    let (modulus, poisson) = elastic(&ring.material)?;
    let part = "ring";
    Ok(Outline { part, inner, outer, front: width, inner_cut, outer_cut, rear: None, step: None, modulus, poisson })
}

fn arc(ring: &RingSection, width: f64, wall: f64, chamfer: f64) -> Result<Option<Arc>, SectionError> {
    let Some(groove) = ring.groove else { return Ok(None) };
    let depth = size("depth of the groove", groove.depth)?;
    let half_width = size("width of the groove", groove.width)? / 2.0;
    let middle = size("middle of the groove", groove.middle)?;
    let inside = middle - half_width >= 0.0 && middle + half_width <= width;
    // A depth beyond half the width would be more than half a circle.
    if depth + chamfer > wall * (1.0 - LEAST_UNDER_GROOVE) || !inside || depth > half_width {
        return Err(SectionError::GrooveTooLarge {
            depth_mm: depth * 1e3,
            from_mm: (middle - half_width) * 1e3,
            to_mm: (middle + half_width) * 1e3,
            width_mm: width * 1e3,
            wall_mm: wall * 1e3,
        });
    }
    Ok(Some(Arc { depth, half_width, middle }))
}

fn liner(liner: &Liner, touching: f64, width: f64, in_housing: bool) -> Result<Outline, SectionError> {
    let thickness = size("thickness of the liner", liner.thickness)?;
    let (inner, outer) = if in_housing { (touching, touching + thickness) } else { (touching - thickness, touching) };
    let (inner, outer) = wall("liner", positive("bore of the liner", 2.0 * inner, "m")?, 2.0 * outer)?;
    tube("liner", (inner, outer), width, liner.front, &liner.material)
}

fn housing(housing: &Housing, bore: f64, width: f64) -> Result<Outline, SectionError> {
    let (inner, outer) = wall("housing", 2.0 * bore, size("outside of the housing", housing.outside)?)?;
    let tube = tube("housing", (inner, outer), width, housing.front, &housing.material)?;
    let rear = match housing.back {
        Back::Open { beyond } => {
            let thickness = bounded("length of the bore behind the ring", beyond, (0.0, LARGEST_SIZE))?;
            (thickness > 0.0).then_some(Rear { thickness, inner, outer })
        }
        Back::Wall { thickness, hole } => {
            let hole = hole.map(|hole| size("hole in the back wall", hole)).transpose()?.unwrap_or(0.0);
            let (inner, _) = wall("shoulder", hole, 2.0 * bore)?;
            Some(Rear { thickness: size("thickness of the back wall", thickness)?, inner, outer })
        }
    };
    let step = housing.step.map(|step| outer_step(&step, inner, (&tube, rear))).transpose()?;
    Ok(Outline { rear, step, ..tube })
}

fn outer_step(step: &Step, bore: f64, (tube, rear): (&Outline, Option<Rear>)) -> Result<OuterStep, SectionError> {
    let (_, outer) = wall("housing behind its step", 2.0 * bore, size("outside behind the step", step.outside)?)?;
    let back = rear.map_or(0.0, |rear| -rear.thickness);
    let least = LEAST_STEP * (tube.front - back);
    let at =
        bounded("distance of the step from the ring's back face", step.position, (back + least, tube.front - least))?;
    Ok(OuterStep { at, outer })
}

fn shaft(shaft: &Shaft, seat: f64, width: f64) -> Result<Outline, SectionError> {
    let bore = shaft.bore.map(|bore| size("bore of the shaft", bore)).transpose()?.unwrap_or(0.0);
    let (inner, outer) = wall("shaft", bore, 2.0 * seat)?;
    let tube = tube("shaft", (inner, outer), width, shaft.front, &shaft.material)?;
    let thickness = bounded("length of the shaft behind the ring", shaft.behind, (0.0, LARGEST_SIZE))?;
    let shoulder = match shaft.shoulder {
        Some(shoulder) => {
            positive("length of the shoulder", thickness, "m")?;
            wall("shoulder", 2.0 * outer, size("shoulder of the shaft", shoulder)?)?.1
        }
        None => outer,
    };
    Ok(Outline { rear: (thickness > 0.0).then_some(Rear { thickness, inner, outer: shoulder }), ..tube })
}

fn tube(
    part: &'static str,
    (inner, outer): (f64, f64),
    width: f64,
    beyond: Length,
    material: &Elastic,
) -> Result<Outline, SectionError> {
    let beyond = bounded("length beyond the ring's front face", beyond, (-width, LARGEST_SIZE))?;
    let front = positive("length of the seat", width + beyond, "m")?;
    let (modulus, poisson) = elastic(material)?;
    let (inner_cut, outer_cut) = (Cut::default(), Cut::default());
    Ok(Outline { part, inner, outer, front, inner_cut, outer_cut, rear: None, step: None, modulus, poisson })
}

fn elastic(material: &Elastic) -> Result<(f64, f64), SectionError> {
    let modulus = positive("elastic modulus", material.modulus.get::<pascal>(), "Pa")?;
    Ok((modulus, within("Poisson ratio", material.poisson, (0.0, LARGEST_POISSON), "")?))
}

/// Radii of a part from its two diameters, when there is a wall between them.
fn wall(part: &'static str, inside: f64, outside: f64) -> Result<(f64, f64), SectionError> {
    if outside - inside >= LEAST_WALL * outside {
        Ok((inside / 2.0, outside / 2.0))
    } else {
        Err(SectionError::NoWall { part, inside_mm: inside * 1e3, outside_mm: outside * 1e3 })
    }
}

fn size(what: &'static str, length: Length) -> Result<f64, SectionError> {
    let length = rounded(positive(what, length.get::<meter>(), "m")?);
    // What is rounded to nothing is refused with the value as given.
    Ok(within(what, length, (STEP, LARGEST_SIZE), "m")?)
}

fn bounded(what: &'static str, length: Length, (from, to): (f64, f64)) -> Result<f64, SectionError> {
    Ok(rounded(within(what, length.get::<meter>() * 1e3, (from * 1e3, to * 1e3), "mm")? / 1e3))
}

fn rounded(length: f64) -> f64 {
    (length / STEP).round() * STEP
}
