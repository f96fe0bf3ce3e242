//! A log beside its plan, as text, CSV or JSON.

use super::chart::aligned;
use super::json::{figures, pretty};
use super::sheet::{self, Cell};
use super::text::Page;
use crate::job::Piece;
use crate::plan::log::{CurvePoint, Deviation, FittedFilm, LogPlan, LogPoint, NoFilm, PieceLog, Target};
use crate::quantity::{
    HeatTransfer, System, TemperatureInterval, ThermodynamicTemperature, Time, Toward, show_duration,
    show_film_coefficient, show_temperature, show_temperature_step, warming,
};
use crate::report::Layout;
use serde_json::{Value, json};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

/// Share of the film from which its uncertainty is said to be large.
const LOOSE: f64 = 0.3;

/// The log as text: for each piece the answer, the readings, and what to do with the film.
pub fn text(plan: &LogPlan<'_>, layout: impl Into<Layout>) -> String {
    let Layout { system, columns } = layout.into();
    let mut page = Page::new(columns);
    if !plan.job.heading.title.is_empty() {
        page.flush(&plan.job.heading.title);
    }
    for piece in &plan.pieces {
        of_piece(plan, piece, system, &mut page);
    }
    if plan.empty_rows > 0 {
        page.heading("Left out");
        let rows = if plan.empty_rows == 1 { "row" } else { "rows" };
        page.paragraph(&format!("{} {rows} without a value.", plan.empty_rows));
    }
    page.finish()
}

fn of_piece(plan: &LogPlan<'_>, piece: &PieceLog, system: System, page: &mut Page) {
    page.heading(&format!("The {}, {}", noun(plan, piece.piece), words_of(&piece.medium)));
    page.paragraph(&answer(plan, piece, system));
    for line in [off(piece, system), time(piece, system), verdict(plan)].into_iter().flatten() {
        page.paragraph(&line);
    }
    for line in doubts(piece, system) {
        page.hanging("NOTICE: ", &line);
    }
    page.line("");
    for line in aligned(&rows(piece, system)) {
        page.line(&format!("  {line}"));
    }
    page.line("");
    page.paragraph(&begun(piece, system));
    if let Ok(fitted) = &piece.fitted {
        page.paragraph(
            "The fitted film is one coefficient for the whole way, by least squares; radiation, wrap and what the part rests on \
             are in the middle of their ranges. Its range is two standard uncertainties of the scatter of the readings (JCGM \
             100); a thermometer that reads wrong, or sits in the air beside the part, is not in it.",
        );
        page.paragraph(&format!(
            "To keep it, write this under [{}] of jobs with this part and this medium, or let --keep FILE write the job; \
             --keep-medium FILE writes the medium for other jobs:",
            section(plan, piece.piece)
        ));
        page.line(&format!("      film = \"{}\"", typed(fitted.film)));
    }
}

/// "Its film is 6.1 (5.9 to 6.3) W/(m²·K), ..." as the picture's title has it too.
pub fn answer(plan: &LogPlan<'_>, piece: &PieceLog, system: System) -> String {
    let name = noun(plan, piece.piece);
    let (slow, quick) = piece.expected_film;
    match &piece.fitted {
        Ok(found) => {
            let pace = if found.range.1 < slow {
                "slower than the plan expects"
            } else if found.range.0 > quick {
                "quicker than the plan expects"
            } else {
                "about as the plan expects"
            };
            let (value, unit) = film_apart(found.film, system);
            format!(
                "The {name} moves {pace} in its medium ({}): its film is {value} ({}) {unit}; the plan counts with {}.",
                words_of(&piece.medium),
                span(found.range, system),
                span((slow, quick), system)
            )
        }
        Err(why) => {
            let late = piece.behind().map(|(target, last)| late(name, target, last, system));
            format!("{}No film is fitted: {}", late.unwrap_or_default(), no_film(*why))
        }
    }
}

/// A piece that a heater leaves behind the plan.
fn late(name: &str, target: &Target, last: &LogPoint, system: System) -> String {
    let shown = |temperature| show_temperature(temperature, system, 1, Toward::Nearest);
    format!(
        "The readings do not fit the plan: the {name} warms so slowly that it is at {} after {}, where the plan has {} after {}. ",
        shown(last.read),
        show_duration(last.time, Toward::Nearest),
        shown(target.temperature),
        show_duration(target.planned, Toward::Up)
    )
}

/// A film to three figures in metric units, to two in inch units.
fn film(film: HeatTransfer, system: System) -> String {
    if system == System::Inch {
        return show_film_coefficient(film, system, Toward::Nearest);
    }
    let value = film.get::<watt_per_square_meter_kelvin>();
    let places = if value < 10.0 { 2 } else { usize::from(value < 100.0) };
    format!("{value:.places$} W/(m²·K)")
}

/// The number of a film, and its unit.
fn film_apart(value: HeatTransfer, system: System) -> (String, String) {
    let shown = film(value, system);
    let (number, unit) = shown.split_once(' ').unwrap_or((&shown, ""));
    (number.to_owned(), unit.to_owned())
}

/// "5.18 to 5.25" in the unit that stands beside it; one number where both ends are alike.
fn span((low, high): (HeatTransfer, HeatTransfer), system: System) -> String {
    let [low, high] = [low, high].map(|film| film_apart(film, system).0);
    if low == high { low } else { format!("{low} to {high}") }
}

/// The id of a medium as words.
fn words_of(medium: &str) -> String {
    medium.replace('-', " ")
}

fn no_film(why: NoFilm) -> &'static str {
    match why {
        NoFilm::Heated => "the part is heated from within, and the film of the air around it decides little.",
        NoFilm::Boiling => "the film of boiling nitrogen changes tenfold on the way, and no one value stands for it.",
        NoFilm::Still => "the part has moved by less than 2 K, which says nothing of the film.",
    }
}

fn off(piece: &PieceLog, system: System) -> Option<String> {
    let told = |off: &Deviation| {
        let size = show_temperature_step(magnitude(off.worst), system, Toward::Up);
        let side = if off.worst.get::<step_kelvin>() > 0.0 { "warmer" } else { "colder" };
        format!(
            "{} on average (root mean square), {size} {side} at worst after {}",
            show_temperature_step(off.root_mean_square, system, Toward::Up),
            show_duration(off.worst_at, Toward::Nearest)
        )
    };
    let mut line = format!(
        "The middle of the expected range is off by {}; {} of {} readings lie in the range.",
        told(&piece.expected_off),
        piece.inside,
        piece.points.len()
    );
    if let Ok(found) = &piece.fitted {
        line.push_str(&format!(" With the fitted film it is off by {}.", told(&found.off)));
    }
    Some(line)
}

fn time(piece: &PieceLog, system: System) -> Option<String> {
    let target = piece.target.as_ref()?;
    let temperature = show_temperature(target.temperature, system, 1, Toward::Nearest);
    let planned = show_duration(target.planned, Toward::Up);
    if piece.fitted.is_err() {
        return Some(format!(
            "The plan takes it out after {planned} at {temperature}, counted with the slow end of its range; from then on it is \
             expected to stay so."
        ));
    }
    Some(match target.fitted {
        Some(time) => format!(
            "The plan takes it out after {planned} at {temperature}, counted with the slow end of its range; with the fitted film it \
             is there after {}.",
            show_duration(time, Toward::Up)
        ),
        None => {
            format!("The plan takes it out at {temperature} after {planned}; with the fitted film it never gets there.")
        }
    })
}

fn verdict(plan: &LogPlan<'_>) -> Option<String> {
    let (before, after) = (plan.verdict_planned.words(), plan.verdict_fitted?.words());
    Some(if before == after {
        format!("The verdict stays as it is: {before}.")
    } else {
        format!("The verdict becomes \"{after}\"; as the job stands it is \"{before}\".")
    })
}

fn doubts(piece: &PieceLog, system: System) -> Vec<String> {
    let mut lines = Vec::new();
    if piece.behind().is_some() {
        lines.push(
            "less heat goes into the part than the power of the job says: look at the heater's setting, and whether it holds back by \
             itself. Go by the temperature of the part, not by the clock."
                .to_owned(),
        );
    }
    if let Ok(found) = &piece.fitted {
        if let Some((early, late)) = found.halves {
            lines.push(format!(
                "one film does not describe these readings: the earlier half speaks for {}, the later for {}. Was the medium \
                 stirred, warmed by the part, or opened on the way? Is the thermometer in the part? Trust the fitted film to \
                 no more than that.",
                film(early, system),
                film(late, system)
            ));
        }
        if found.unbounded {
            lines.push(
                "the fit ran to the end of the films that a job may have: the readings do not bound it.".to_owned(),
            );
        } else if ratio(found) > 1.0 + LOOSE {
            lines.push(
                "the film is known to no better than the range above: read more often while the part still moves."
                    .to_owned(),
            );
        }
    }
    if let Some((from, to)) = piece.gap {
        let show = |time| show_duration(time, Toward::Nearest);
        lines.push(format!("there is no reading from {} to {}.", show(from), show(to)));
    }
    lines
}

fn ratio(found: &FittedFilm) -> f64 {
    found.range.1.value / found.film.value
}

fn begun(piece: &PieceLog, system: System) -> String {
    let start = show_temperature(piece.start, system, 1, Toward::Nearest);
    let whence = if piece.start_read {
        "as read at 0 s"
    } else {
        "the shop of the job; add its reading at 0 s when it was other"
    };
    format!(
        "Times count from when the part went in, at {start} ({whence}). Off is the reading less the middle of the expected range."
    )
}

fn rows(piece: &PieceLog, system: System) -> Vec<Vec<String>> {
    let head = ["time", "read", "expected", "off", "with fitted film"].map(str::to_owned).to_vec();
    let degrees = |temperature| show_temperature(temperature, system, 1, Toward::Nearest);
    let row = |point: &LogPoint| {
        let [slow, middle, quick] = point.expected;
        vec![
            show_duration(point.time, Toward::Nearest),
            degrees(point.read),
            format!("{} to {}", degrees(slow), degrees(quick)),
            signed(warming(point.read, middle), system),
            point.fitted.map_or_else(|| "-".to_owned(), degrees),
        ]
    };
    std::iter::once(head).chain(piece.points.iter().map(row)).collect()
}

fn signed(difference: TemperatureInterval, system: System) -> String {
    let size = show_temperature_step(magnitude(difference), system, Toward::Nearest);
    let sign = if difference.get::<step_kelvin>() < 0.0 { "-" } else { "+" };
    format!("{sign}{size}")
}

fn magnitude(difference: TemperatureInterval) -> TemperatureInterval {
    TemperatureInterval::new::<step_kelvin>(difference.get::<step_kelvin>().abs())
}

fn noun(plan: &LogPlan<'_>, piece: Piece) -> &'static str {
    match piece {
        Piece::Part => plan.job.part.kind.noun(),
        Piece::Housing => "housing",
        Piece::Shaft => "shaft",
    }
}

fn section(plan: &LogPlan<'_>, piece: Piece) -> &'static str {
    if plan.job.chill.as_ref().is_some_and(|chill| chill.piece == piece) { "chill" } else { "warm" }
}

/// A film as a job takes it.
fn typed(film: HeatTransfer) -> String {
    let value = film.get::<watt_per_square_meter_kelvin>();
    format!(
        "{} W/m²K",
        figures(if value < 100.0 { (value * 100.0).round() / 100.0 } else { (value * 10.0).round() / 10.0 })
    )
}

/// Each key of the job that holds a fitted film, with its value: what `job::put` puts there.
pub fn kept(plan: &LogPlan<'_>) -> Vec<(String, String)> {
    let film = |piece: &PieceLog| {
        let found = piece.fitted.as_ref().ok()?;
        Some((format!("{}.film", section(plan, piece.piece)), typed(found.film)))
    };
    plan.pieces.iter().filter_map(film).collect()
}

/// The readings as CSV, one row each.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn csv(plan: &LogPlan<'_>) -> Result<String, csv::Error> {
    let names =
        ["part", "medium", "time_s", "read_c", "expected_slow_c", "expected_middle_c", "expected_quick_c", "fitted_c"];
    let mut rows = vec![sheet::head(names)];
    for piece in &plan.pieces {
        for point in &piece.points {
            let mut row = vec![
                Cell::text(noun(plan, piece.piece)),
                Cell::text(piece.medium.as_str()),
                Cell::number(point.time.get::<second>()),
            ];
            let degrees = [point.read].into_iter().chain(point.expected).map(|t| Cell::number(celsius(t)));
            row.extend(degrees);
            row.push(Cell::number(point.fitted.map(celsius)));
            rows.push(row);
        }
    }
    sheet::written(rows)
}

/// The log as one JSON object, `seatwise.log/1`.
///
/// # Errors
/// None in practice: every number is finite.
pub fn json(plan: &LogPlan<'_>) -> Result<String, serde_json::Error> {
    pretty(&json!({
        "format": "seatwise.log/1",
        "title": plan.job.heading.title,
        "verdict_planned": plan.verdict_planned.words(),
        "verdict_fitted": plan.verdict_fitted.map(|verdict| verdict.words()),
        "rows_without_value": plan.empty_rows,
        "parts": plan.pieces.iter().map(|piece| one(plan, piece)).collect::<Vec<_>>(),
    }))
}

fn one(plan: &LogPlan<'_>, piece: &PieceLog) -> Value {
    let film = |film: HeatTransfer| figures(film.get::<watt_per_square_meter_kelvin>());
    let fitted = piece.fitted.as_ref().ok();
    let halves = fitted.and_then(|found| found.halves);
    let point = |point: &LogPoint| {
        let curve = CurvePoint { time: point.time, expected: point.expected, fitted: point.fitted };
        let mut value = on_curve(&curve);
        value["read_c"] = json!(celsius(point.read));
        value
    };
    json!({
        "part": noun(plan, piece.piece),
        "medium": piece.medium,
        "medium_c": celsius(piece.medium_temperature),
        "start_c": celsius(piece.start),
        "start_read": piece.start_read,
        "expected_film_w_m2k": { "slow": film(piece.expected_film.0), "quick": film(piece.expected_film.1) },
        "expected_off": deviation(&piece.expected_off),
        "readings_inside": piece.inside,
        "film_w_m2k": fitted.map(|found| film(found.film)),
        "film_w_m2k_reason": piece.fitted.as_ref().err().map(|why| no_film(*why)),
        "film_range_w_m2k": fitted.map(|found| json!({ "low": film(found.range.0), "high": film(found.range.1) })),
        "film_halves_w_m2k": halves.map(|(early, late)| json!({ "earlier": film(early), "later": film(late) })),
        "film_unbounded": fitted.map(|found| found.unbounded),
        "fitted_off": fitted.map(|found| deviation(&found.off)),
        "target": piece.target.as_ref().map(|target| json!({
            "temperature_c": celsius(target.temperature),
            "planned_s": seconds(target.planned),
            "fitted_s": target.fitted.map(seconds),
        })),
        "readings": piece.points.iter().map(point).collect::<Vec<_>>(),
        "curve": piece.curve.iter().map(on_curve).collect::<Vec<_>>(),
    })
}

fn on_curve(point: &CurvePoint) -> Value {
    let [slow, middle, quick] = point.expected.map(celsius);
    json!({
        "time_s": seconds(point.time),
        "expected_c": { "slow": slow, "middle": middle, "quick": quick },
        "fitted_c": point.fitted.map(celsius),
    })
}

fn deviation(off: &Deviation) -> Value {
    json!({
        "root_mean_square_k": figures(off.root_mean_square.get::<step_kelvin>()),
        "worst_k": figures(off.worst.get::<step_kelvin>()),
        "worst_at_s": seconds(off.worst_at),
    })
}

fn celsius(temperature: ThermodynamicTemperature) -> f64 {
    figures(temperature.get::<degree_celsius>())
}

fn seconds(time: Time) -> f64 {
    figures(time.get::<second>())
}
