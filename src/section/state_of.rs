//! From the row of numbers of a solution to a [`State`].

use super::grading::distinct;
use super::model::Model;
use super::observe::{Layout, Line};
use super::outline::same;
use super::state::{ChangeAt, Contact, PartChange, PressureAt, State, SurfaceChange, WallState};
use super::stress::SINGULAR;
use super::touch::Touch;
use crate::quantity::{Force, Length, Pressure};
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::pressure::pascal;

/// The state that a row of numbers says.
pub(super) fn state(model: &Model, layout: &Layout, row: &[f64]) -> State {
    let mut contacts = Vec::new();
    let mut from = 0;
    for (k, touch) in model.touches.iter().enumerate() {
        let (pressure, gaps) = layout.contact(row, from, touch.len());
        from += touch.len();
        contacts.push(contact(touch, (pressure, model.outlines.bonded == Some(k)), gaps, ends(model, k)));
    }
    let mut parts = vec![(None, None); model.bodies.len()];
    for (k, line) in layout.lines.iter().enumerate() {
        let change = surface(line, layout.line(row, k), raceway(model));
        let outside = same(line.radius, model.outlines.bodies[line.body].outer);
        let part = &mut parts[line.body];
        *(if outside { &mut part.1 } else { &mut part.0 }) = Some(change);
    }
    let part = |(inside, outside): (Option<SurfaceChange>, Option<SurfaceChange>)| {
        outside.map(|outside| PartChange { inside, outside })
    };
    let wall = model.abutment.as_ref().map(|_| wall(layout.wall(row)));
    State { contacts, parts: parts.into_iter().filter_map(part).collect(), wall }
}

/// Between which positions the pressure of a contact is given.
fn ends(model: &Model, k: usize) -> (f64, f64) {
    let (from, to) = model.outlines.contact(k);
    let width = model.outlines.bodies[model.outlines.ring].front;
    let cut = |singular: bool| if singular { SINGULAR * width } else { 0.0 };
    let [back, front] = singular_ends(model, k);
    (from + cut(back), to - cut(front))
}

/// Whether back and front end of a contact are singular: a part goes on beyond them.
pub(super) fn singular_ends(model: &Model, k: usize) -> [bool; 2] {
    let (from, to) = model.outlines.contact(k);
    let pair = [&model.outlines.bodies[k], &model.outlines.bodies[k + 1]];
    let goes_on = |end: f64, own: f64| !same(end, own);
    [pair.iter().any(|body| goes_on(from, body.back())), pair.iter().any(|body| goes_on(to, body.front))]
}

/// Pressures from one position to another, those at both ends read between corners.
fn given(touch: &Touch, pressure: &[f64], (from, to): (f64, f64)) -> Vec<PressureAt> {
    let mut places: Vec<f64> = touch.axial.iter().copied().filter(|z| *z > from && *z < to).collect();
    places.insert(0, from);
    places.push(to);
    let mut edge = 0;
    let mut at = |z: f64| {
        while edge + 2 < touch.len() && touch.axial[edge + 1] < z {
            edge += 1;
        }
        let share = (z - touch.axial[edge]) / (touch.axial[edge + 1] - touch.axial[edge]);
        let value = pressure[edge] + share.clamp(0.0, 1.0) * (pressure[edge + 1] - pressure[edge]);
        PressureAt { position: metres(z), pressure: pascals(value) }
    };
    distinct(places, 1e-9 * to.abs()).into_iter().map(&mut at).collect()
}

fn contact(touch: &Touch, (pressure, bonded): (&[f64], bool), gaps: &[f64], ends: (f64, f64)) -> Contact {
    let (area, normal) = (touch.whole_area(), touch.normal_force(pressure));
    // A bonded seam touches all along, whatever it bears.
    let is_open = |p: f64| p <= 0.0 && !bonded;
    let open_area: f64 = pressure.iter().zip(&touch.area).filter(|(p, _)| is_open(**p)).map(|(_, area)| area).sum();
    let gap: f64 =
        gaps.iter().zip(&touch.area).zip(pressure).filter(|(_, p)| is_open(**p)).map(|((g, a), _)| g * a).sum();
    let any = bonded || pressure.iter().any(|p| *p > 0.0);
    let least = if any { 0.0 } else { gaps.iter().copied().fold(f64::INFINITY, f64::min).max(0.0) };
    Contact {
        diameter: metres(2.0 * touch.radius),
        length: metres(touch.axial[touch.len() - 1] - touch.axial[0]),
        pressure: given(touch, pressure, ends),
        mean_pressure: pascals(normal / area),
        normal_force: Force::new::<newton>(normal),
        touching: 1.0 - open_area / area,
        mean_clearance: metres(if open_area > 0.0 { 2.0 * gap / open_area } else { 0.0 }),
        least_clearance: metres(2.0 * least),
    }
}

fn surface(line: &Line, displacement: &[f64], raceway: f64) -> SurfaceChange {
    let along: Vec<ChangeAt> = line
        .axial
        .iter()
        .zip(displacement)
        .map(|(&z, &u)| ChangeAt { position: metres(z), change: metres(2.0 * u) })
        .collect();
    let (mut sum, mut length) = (0.0, 0.0);
    for edge in (0..line.axial.len().saturating_sub(2)).step_by(2) {
        let (step, u) = (line.axial[edge + 2] - line.axial[edge], &displacement[edge..]);
        // Simpson's rule is exact for the element's parabola.
        sum += step / 6.0 * (u[0] + 4.0 * u[1] + u[2]);
        length += step;
    }
    let mut change = SurfaceChange { along, mean: metres(2.0 * sum / length), at_raceway: metres(0.0) };
    change.at_raceway = change.at(metres(raceway));
    change
}

/// Axial position of the middle of the groove, or of the ring.
fn raceway(model: &Model) -> f64 {
    let ring = &model.outlines.bodies[model.outlines.ring];
    let arc = ring.inner_cut.arc.or(ring.outer_cut.arc);
    arc.map_or(ring.front / 2.0, |arc| arc.middle)
}

pub(super) fn wall(values: &[f64]) -> WallState {
    WallState {
        root_membrane: pascals(values[0]),
        root_bending: pascals(values[1]),
        edge_membrane: pascals(values[2]),
        edge_bending: pascals(values[3]),
        edge_deflection: metres(values[4]),
        edge_deflection_from_rim: metres(values[5]),
        face_deflection: metres(values[6]),
    }
}

fn metres(value: f64) -> Length {
    Length::new::<meter>(value)
}

fn pascals(value: f64) -> Pressure {
    Pressure::new::<pascal>(value)
}
