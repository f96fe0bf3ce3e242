//! The ways of a seat on the map of temperatures: how cold the inner part is across, how hot the outer one is upwards.

use super::contour::{self, Kind, Mark, Values};
use super::font::Fonts;
use super::frame::{Around, Axis, Frame};
use super::scene::{Area, Picture, at};
use super::units::{length_name, length_text, length_value};
use super::{PlotError, WaysRequest};
use crate::plan::SeatKind;
use crate::quantity::{System, ThermodynamicTemperature};
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};

/// Ways that are marked.
const MOST: usize = 8;

fn degrees(temperature: ThermodynamicTemperature, system: System) -> f64 {
    match system {
        System::Metric => temperature.get::<degree_celsius>(),
        System::Inch => temperature.get::<degree_fahrenheit>(),
    }
}

/// The whole picture.
pub(super) fn picture(request: &WaysRequest<'_>, fonts: &Fonts) -> Result<Picture, PlotError> {
    let (map, system) = (&request.seat.map, request.system);
    let all = |list: &[ThermodynamicTemperature]| -> Vec<f64> { list.iter().map(|t| degrees(*t, system)).collect() };
    let (inner, outer) = (all(&map.inner), all(&map.outer));
    let (Some(across), Some(up)) = (ends(&inner), ends(&outer)) else { return Err(PlotError::NoPoints) };
    let (chilled, warmed) = pieces(request);
    let unit = if system == System::Metric { "°C" } else { "°F" };
    let name = |what: &str| format!("{what} when it reaches the seat, {unit}");
    let rows: Vec<Vec<Option<f64>>> = map
        .clearance
        .iter()
        .map(|row| row.iter().map(|cell| cell.map(|clearance| length_value(clearance, system))).collect())
        .collect();
    // True minus signs.
    let mut notes: Vec<String> = request.ways.iter().take(MOST).map(|way| way.replace(" -", " −")).collect();
    notes.push(format!(
        "Contours: clearance in {}. Marks, full: time enough; half: a race; ring: pressed. {}.",
        length_name(system),
        contour::AREAS
    ));
    let around = Around { title: request.title, subtitle: request.subtitle, notes: &notes, margin: 12.0 };
    let mut frame = Frame::new(
        &around,
        Axis::over(name(chilled), across.0, across.1),
        Axis::over(name(warmed), up.0, up.1),
        fonts,
    )?;
    let marks: Vec<Mark> = map
        .marks
        .iter()
        .take(MOST)
        .map(|mark| Mark {
            place: (degrees(mark.inner, system), degrees(mark.outer, system)),
            kind: match (mark.drops_in, mark.comfortable) {
                (true, true) => Kind::Good,
                (true, false) => Kind::Race,
                (false, _) => Kind::Pressed,
            },
            label: mark.rank.to_string(),
        })
        .collect();
    let mut taken = contour::solid(&frame, &marks);
    let placing = Some(length_value(map.placing, system));
    contour::contours(&mut frame, &Values { across: &inner, up: &outer, rows: &rows, placing }, &mut taken);
    limits(&mut frame, request, &mut taken);
    contour::marks(&mut frame, &marks, &mut taken);
    frame.rim();
    let description = format!(
        "{} Clearance over the temperatures of both parts when they reach the seat; it drops in from {}. {}",
        request.subtitle,
        length_text(map.placing, system),
        request.ways.iter().take(MOST).cloned().collect::<Vec<_>>().join(" ")
    );
    Ok(Picture { scene: frame.pen.scene, title: request.title.to_owned(), description: description.trim().to_owned() })
}

fn pieces(request: &WaysRequest<'_>) -> (&'static str, &'static str) {
    let part = request.seat.job.part.kind.noun();
    match request.seat.seat {
        SeatKind::Housing => (part, "housing"),
        SeatKind::Shaft => ("shaft", part),
    }
}

fn ends(values: &[f64]) -> Option<(f64, f64)> {
    values.first().copied().zip(values.last().copied())
}

/// What is too cold for the inner part, and too hot for the outer one.
fn limits(frame: &mut Frame<'_>, request: &WaysRequest<'_>, taken: &mut Vec<Area>) {
    let (map, field) = (&request.seat.map, frame.field);
    if let Some(x) = map.coldest.map(|cold| frame.x(degrees(cold, request.system))).filter(|x| *x > field.left) {
        contour::forbid(frame, Area { right: x.min(field.right), ..field }, "too cold", taken);
        contour::limit_line(frame, [at(x, field.top), at(x, field.bottom)]);
    }
    if let Some(y) = map.hottest.map(|hot| frame.y(degrees(hot, request.system))).filter(|y| *y > field.top) {
        contour::forbid(frame, Area { bottom: y.min(field.bottom), ..field }, "too hot", taken);
        contour::limit_line(frame, [at(field.left, y), at(field.right, y)]);
    }
}
