//! What a seal asks of its bore and its shaft, held against what the job says.

use super::model::Demand;
use crate::fit::{ToleranceClass, limits_of_size};
use crate::job::{AnyValue, SealBody};
use crate::plan::PlanError;
use crate::quantity::{Length, Nanometres, Roughness, Velocity};
use crate::stock::seal_seats::{Asked, FAST_M_S, SealRow, asked};
use uom::si::length::{micrometer, millimeter};
use uom::si::velocity::meter_per_second;

/// How a number of the table is printed.
type Printed = fn(f64) -> AnyValue;

fn mm(value: f64) -> AnyValue {
    AnyValue::Size(Length::new::<millimeter>(value))
}

fn ra(value: f64) -> AnyValue {
    AnyValue::Roughness(Roughness::Ra(Length::new::<micrometer>(value)))
}

fn rz(value: f64) -> AnyValue {
    AnyValue::Roughness(Roughness::Rz(Length::new::<micrometer>(value)))
}

fn degrees(value: f64) -> AnyValue {
    AnyValue::Text(format!("{value}°"))
}

fn rockwell(value: f64) -> AnyValue {
    AnyValue::Text(format!("{value} HRC"))
}

/// A line of what is wanted.
struct Line {
    what: &'static str,
    row: Option<SealRow>,
    printed: Printed,
    /// What the job gives, in the unit of the row.
    given: Option<f64>,
}

impl Line {
    fn demand(self) -> Option<Demand> {
        let row = self.row?;
        let within = |given: f64| {
            let above = row.low.is_none_or(|low| given >= low - ROUNDING);
            let below = row.high.is_none_or(|high| given <= high + ROUNDING);
            above && below
        };
        Some(Demand {
            what: self.what,
            low: row.low.map(self.printed),
            high: row.high.map(self.printed),
            given: self.given.map(self.printed),
            met: self.given.map(within),
            source: source(&row),
        })
    }
}

/// What the last digits of a calculation may be off.
const ROUNDING: f64 = 1e-9;

/// The text behind a row, in words.
pub(in crate::plan) fn source(row: &SealRow) -> String {
    let text = match row.source.as_str() {
        "seal-press-fit" => "DIN 3760 press-fit table, a reproduction",
        "seal-chapter" => "technical chapter on shaft seals that cites DIN 3760, a reproduction",
        "memory-6194" => "ISO 6194-1",
        "memory-speed" => "charts in the manner of DIN 3760",
        _ => "DIN 3760 and DIN 3761",
    };
    format!("{text} ({})", row.status)
}

/// Every line, the bore's first.
pub(super) fn demands(body: &SealBody, lip_speed: Option<Velocity>) -> Result<Vec<Demand>, PlanError> {
    let mut lines = bore(body)?;
    lines.extend(shaft(body, lip_speed)?);
    Ok(lines.into_iter().filter_map(Line::demand).chain(shaft_tolerance(body)).collect())
}

/// Class of the shaft under the lip.
const SHAFT_CLASS: &str = "h11";

/// The width of the shaft's tolerance: a closer one, such as that of a bearing seat beside it, does no harm.
fn shaft_tolerance(body: &SealBody) -> Option<Demand> {
    let class = ToleranceClass::parse(SHAFT_CLASS).ok()?;
    let most = limits_of_size(Nanometres::from_length(body.inside), class).ok()?.width();
    let given = body.shaft.width();
    Some(Demand {
        what: "shaft, tolerance (h11 or closer)",
        low: None,
        high: Some(AnyValue::SmallLength(most.length())),
        given: Some(AnyValue::SmallLength(given.length())),
        met: Some(given <= most),
        source: "DIN 3760, in a web reproduction".to_owned(),
    })
}

fn bore(body: &SealBody) -> Result<Vec<Line>, PlanError> {
    let case = body.case.name();
    let in_mm = |length: Option<Length>| length.map(|length| length.get::<millimeter>());
    let (given_ra, given_rz) = parameters(body.bore_roughness);
    let free = body.shoulder.map(|shoulder| shoulder.get::<millimeter>());
    let straight = asked(Asked::SeatShare, "", body.width)?.cloned().map(|mut row| {
        row.low = row.low.map(|share| share * body.width.get::<millimeter>());
        row
    });
    // With a lead-in of unknown length only a bore that is too short without any is known to be so.
    let least = straight.as_ref().and_then(|row| row.low);
    let given = match (free, in_mm(body.chamfer)) {
        (Some(free), Some(chamfer)) => Some(free - chamfer),
        (free, _) => free.zip(least).filter(|(free, least)| free < least).map(|(free, _)| free),
    };
    let depth = asked(Asked::SeatAbove, "", body.width)?.cloned().map(|mut row| {
        row.low = row.low.map(|above| above + body.width.get::<millimeter>());
        row
    });
    let lines = vec![
        line("bore, lead-in: angle", asked(Asked::BoreChamferAngle, "", body.width)?, degrees, None),
        line("bore, lead-in: length", asked(Asked::BoreChamferLength, "", body.width)?, mm, in_mm(body.chamfer)),
        line("bore, corner: radius", asked(Asked::BoreCornerRadius, "", body.width)?, mm, None),
        line("bore, roughness", asked(Asked::BoreRa, case, body.outside)?, ra, given_ra),
        line("bore, roughness", asked(Asked::BoreRz, case, body.outside)?, rz, given_rz),
        line("bore, straight length", straight.as_ref(), mm, given),
        line("bore, depth to the shoulder", depth.as_ref(), mm, free),
    ];
    Ok(lines)
}

fn shaft(body: &SealBody, lip_speed: Option<Velocity>) -> Result<Vec<Line>, PlanError> {
    let (given_ra, given_rz) = parameters(body.shaft_roughness);
    let fast = lip_speed.is_some_and(|speed| speed.get::<meter_per_second>() >= FAST_M_S);
    let hardness = if fast { Asked::ShaftHardnessFast } else { Asked::ShaftHardness };
    let lead_in = body.shaft_end.map(|end| (body.inside - end).get::<millimeter>());
    Ok(vec![
        line("shaft, roughness", asked(Asked::ShaftRa, "", body.inside)?, ra, given_ra),
        line("shaft, roughness", asked(Asked::ShaftRz, "", body.inside)?, rz, given_rz),
        line("shaft, hardness", asked(hardness, "", body.inside)?, rockwell, body.shaft_hardness),
        line("shaft less thin end of lead-in", asked(Asked::ShaftLeadIn, "", body.inside)?, mm, lead_in),
    ])
}

fn line(what: &'static str, row: Option<&SealRow>, printed: Printed, given: Option<f64>) -> Line {
    Line { what, row: row.cloned(), printed, given }
}

/// Ra and Rz, µm, whichever is given.
fn parameters(roughness: Option<Roughness>) -> (Option<f64>, Option<f64>) {
    match roughness {
        Some(Roughness::Ra(height)) => (Some(height.get::<micrometer>()), None),
        Some(Roughness::Rz(height)) => (None, Some(height.get::<micrometer>())),
        None => (None, None),
    }
}
