//! A sweep: clearance over the values of one key, or contours of the tightest case over those of two.

use super::contour::{self, AREAS, Kind, Mark, Values};
use super::dash;
use super::font::Fonts;
use super::frame::{Around, Axis, Frame};
use super::lines::{self, Line};
use super::palette::{LOOSEST, MIDDLE, TIGHTEST};
use super::scene::Picture;
use super::units::{length_name, length_value};
use super::{PlotError, SweepKey, SweepRequest};
use crate::plan::{SeatPlan, Verdict};
use crate::quantity::{Cases, Length};

/// What the marks of a plain line mean.
const MARKS: &str = "full: drops in; half: some need the press; ring: pressed; cross: must not be done";

/// The whole picture.
pub(super) fn picture(request: &SweepRequest<'_>, fonts: &Fonts) -> Result<Picture, PlotError> {
    let seats: Vec<&SeatPlan> = request.steps.iter().filter_map(|step| step.plan.seats.get(request.seat)).collect();
    let count: usize = request.keys.iter().map(|key| key.values.len()).product();
    if seats.is_empty() || seats.len() != count {
        return Err(PlotError::NoPoints);
    }
    let placing = seats.iter().map(|seat| seat.history.placing_clearance);
    let same = |all: &[Length]| all.windows(2).all(|pair| (pair[0] - pair[1]).value.abs() < 1e-12);
    let placing = Some(placing.collect::<Vec<_>>()).filter(|all| same(all)).and_then(|all| all.first().copied());
    let drawer = Drawer { request, seats, placing: placing.map(|length| length_value(length, request.system)), fonts };
    let frame = match request.keys {
        [key] => drawer.of_one(key)?,
        [slow, quick] => drawer.of_two(slow, quick)?,
        _ => return Err(PlotError::NoPoints),
    };
    Ok(Picture { scene: frame.pen.scene, title: request.title.to_owned(), description: drawer.describe() })
}

struct Drawer<'a> {
    request: &'a SweepRequest<'a>,
    seats: Vec<&'a SeatPlan>,
    placing: Option<f64>,
    fonts: &'a Fonts,
}

impl<'a> Drawer<'a> {
    fn clearance(&self, step: usize) -> Cases<f64> {
        self.seats[step].at_bore.clearance.map(|clearance| length_value(clearance, self.request.system))
    }

    /// Three cases over one key.
    fn of_one(&self, key: &SweepKey) -> Result<Frame<'a>, PlotError> {
        let order = in_order(key);
        let at = |step: usize| place(key, step);
        let line = |name: &str, pick: fn(&Cases<f64>) -> f64, (colour, pattern, width), marks| Line {
            name: name.to_owned(),
            points: order.iter().map(|step| (at(*step), pick(&self.clearance(*step)))).collect(),
            colour,
            pattern,
            width,
            marks,
        };
        let kinds = order.iter().map(|step| kind(self.seats[*step].verdict)).collect();
        let all = vec![
            line("loosest", |cases| cases.loosest, (LOOSEST, Some(dash::LONG), 2.5), Vec::new()),
            line("middle", |cases| cases.middle, (MIDDLE, None, 4.5), Vec::new()),
            line("tightest", |cases| cases.tightest, (TIGHTEST, Some(dash::SHORT), 2.5), kinds),
        ];
        self.lines(axis(key), &all, &[format!("Marks of the tightest case, {MARKS}.")])
    }

    fn of_two(&self, slow: &SweepKey, quick: &SweepKey) -> Result<Frame<'a>, PlotError> {
        match (&slow.numbers, &quick.numbers) {
            (Some(_), Some(_)) if slow.values.len() > 1 && quick.values.len() > 1 => self.contours(slow, quick),
            // One line a name, over the key with numbers.
            (None, _) => self.each(slow, quick, |line, along| line * quick.values.len() + along),
            (Some(_), _) => self.each(quick, slow, |line, along| along * quick.values.len() + line),
        }
    }

    /// The tightest case over one key, a line for each value of the other.
    fn each(
        &self,
        named: &SweepKey,
        over: &SweepKey,
        step: impl Fn(usize, usize) -> usize,
    ) -> Result<Frame<'a>, PlotError> {
        let order = in_order(over);
        let line = |(number, name): (usize, &String)| {
            let (colour, pattern) = lines::look(number);
            let steps = || order.iter().map(|along| (*along, step(number, *along)));
            Line {
                name: name.clone(),
                points: steps().map(|(along, step)| (place(over, along), self.clearance(step).tightest)).collect(),
                colour,
                pattern,
                width: 2.5,
                marks: steps().map(|(_, step)| kind(self.seats[step].verdict)).collect(),
            }
        };
        let all: Vec<Line> = named.values.iter().enumerate().map(line).collect();
        self.lines(axis(over), &all, &[format!("Tightest case, one line for each {}. Marks, {MARKS}.", named.name)])
    }

    fn lines(&self, across: Axis, all: &[Line], notes: &[String]) -> Result<Frame<'a>, PlotError> {
        let name = format!("clearance when it reaches the seat, {}", length_name(self.request.system));
        let up = lines::axis(name, all, self.placing);
        let mut frame = Frame::new(&self.around(notes, lines::NAMES), across, up, self.fonts)?;
        lines::draw(&mut frame, all, self.placing);
        frame.rim();
        Ok(frame)
    }

    /// The first key upwards, the second across, and a mark at each plan.
    fn contours(&self, slow: &SweepKey, quick: &SweepKey) -> Result<Frame<'a>, PlotError> {
        let (rows, columns) = (in_order(slow), in_order(quick));
        let step = |row: usize, column: usize| row * quick.values.len() + column;
        let values: Vec<Vec<Option<f64>>> = rows
            .iter()
            .map(|row| columns.iter().map(|column| Some(self.clearance(step(*row, *column)).tightest)).collect())
            .collect();
        let (up, across): (Vec<f64>, Vec<f64>) =
            (rows.iter().map(|row| place(slow, *row)).collect(), columns.iter().map(|c| place(quick, *c)).collect());
        let note = format!(
            "Contours: clearance of the tightest case when it reaches the seat, {}, straight between the plans. Marks, {MARKS}. \
             {AREAS}.",
            length_name(self.request.system)
        );
        let mut frame = Frame::new(&self.around(&[note], 24.0), axis(quick), axis(slow), self.fonts)?;
        let marks: Vec<Mark> = rows
            .iter()
            .flat_map(|row| columns.iter().map(move |column| (*row, *column)))
            .map(|(row, column)| Mark {
                place: (place(quick, column), place(slow, row)),
                kind: kind(self.seats[step(row, column)].verdict),
                label: String::new(),
            })
            .collect();
        let grid = Values { across: &across, up: &up, rows: &values, placing: self.placing };
        let mut taken = contour::solid(&frame, &marks);
        contour::contours(&mut frame, &grid, &mut taken);
        // So many plans that their marks would cover the contours are told by these alone.
        if marks.len() <= MOST_MARKS {
            contour::marks(&mut frame, &marks, &mut Vec::new());
        }
        frame.rim();
        Ok(frame)
    }

    fn around<'n>(&self, notes: &'n [String], margin: f64) -> Around<'n>
    where
        'a: 'n,
    {
        Around { title: self.request.title, subtitle: self.request.subtitle, notes, margin }
    }

    fn describe(&self) -> String {
        let keys: Vec<&str> = self.request.keys.iter().map(|key| key.name.as_str()).collect();
        let ends = (0..self.seats.len()).map(|step| self.clearance(step).tightest);
        let (low, high) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), c| (low.min(c), high.max(c)));
        format!(
            "{} Clearance when the part reaches its seat over {}; the tightest case runs from {low:.1} to {high:.1} {}.",
            self.request.subtitle,
            keys.join(" and "),
            length_name(self.request.system)
        )
        .trim()
        .to_owned()
    }
}

/// Plans whose marks are drawn.
const MOST_MARKS: usize = 400;

fn kind(verdict: Verdict) -> Kind {
    match verdict {
        Verdict::DropsIn => Kind::Good,
        Verdict::SomeWillNot => Kind::Race,
        Verdict::Press => Kind::Pressed,
        Verdict::DoNot => Kind::Forbidden,
    }
}

fn axis(key: &SweepKey) -> Axis {
    match &key.numbers {
        Some((numbers, unit)) => {
            let (low, high) =
                numbers.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| (low.min(*v), high.max(*v)));
            Axis::over(format!("{}{}{unit}", key.name, if unit.is_empty() { "" } else { ", " }), low, high)
        }
        None => Axis::of(key.name.clone(), key.values.clone()),
    }
}

/// Where a value stands on its axis.
fn place(key: &SweepKey, value: usize) -> f64 {
    key.numbers.as_ref().map_or(value as f64, |(numbers, _)| numbers[value])
}

/// The values of a key as they follow on its axis.
fn in_order(key: &SweepKey) -> Vec<usize> {
    let mut order: Vec<usize> = (0..key.values.len()).collect();
    order.sort_by(|a, b| place(key, *a).total_cmp(&place(key, *b)));
    order
}
