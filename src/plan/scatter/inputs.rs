//! What is drawn for a seat, and from which distribution.

use super::ScatterError;
use super::distribution::Distribution;
use crate::job::scatter::{Form, NormalSize, Scatter as Stated, SizeSpread, Spread, Within};
use crate::job::{AnyValue, FilmChoice, Hold, Job, Treatment};
use crate::plan::joint::{Joint, Side};
use crate::plan::model::SeatKind;
use crate::plan::push::{ShapeFactor, length_stated};
use crate::plan::soaking::LONGEST_ON_BENCH_S;
use crate::plan::surroundings::radiates;
use crate::quantity::{Length, Nanometres, TemperatureInterval, ThermodynamicTemperature, Time};
use crate::stock::medium::{Film, Law};
use std::borrow::Cow;
use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// A quantity that is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InputKind {
    /// Diameter of the inner part at 20 °C.
    InnerSize,
    /// Bore of the outer part at 20 °C.
    OuterSize,
    /// Temperature of what chills, or at which the piece is taken out.
    ChillMedium,
    /// Place of its film between the slow and the quick end.
    ChillFilm,
    /// Time in it.
    ChillHold,
    /// Temperature of what warms, or at which the piece is taken out.
    WarmMedium,
    /// Place of its film between the slow and the quick end.
    WarmFilm,
    /// Time in it.
    WarmHold,
    /// Place of the film of shop air between the slow and the quick end.
    AirFilm,
    /// Time from the medium to the seat.
    Carry,
    /// Coefficient of friction.
    Friction,
    /// Factor of the seat's shape on the force.
    Shape,
}

/// How many quantities are drawn.
pub(super) const INPUTS: usize = 12;

impl InputKind {
    /// Every quantity, in the order in which they are drawn.
    pub const ALL: [Self; INPUTS] = [
        Self::InnerSize,
        Self::OuterSize,
        Self::ChillMedium,
        Self::ChillFilm,
        Self::ChillHold,
        Self::WarmMedium,
        Self::WarmFilm,
        Self::WarmHold,
        Self::AirFilm,
        Self::Carry,
        Self::Friction,
        Self::Shape,
    ];

    /// Its place in [`Self::ALL`].
    pub fn index(self) -> usize {
        self as usize
    }
}

/// A quantity that is drawn, with its distribution.
#[derive(Clone, Debug)]
pub struct InputUsed {
    /// Which.
    pub kind: InputKind,
    /// What it is, in words.
    pub name: String,
    /// Its distribution, SI units.
    pub distribution: Distribution,
    /// Its shape in words.
    pub shape: String,
    /// Its least value, or limit.
    pub low: AnyValue,
    /// Its greatest value, or limit.
    pub high: AnyValue,
    /// Why this distribution, where the job does not state it.
    pub assumed: Option<Cow<'static, str>>,
}

/// How far a time in a medium is off, and the time of carrying, where the job says nothing.
const HOLD_SHARE: f64 = 0.05;
const CARRY_SHARE: f64 = 0.3;
/// How far the temperature is off at which a piece is taken out, K.
const THERMOMETER_K: f64 = 2.0;

const SIZES_WHY: &str = "common practice, no published source: limits at three standard deviations, parts beyond them \
                         sorted out; state sizes under [scatter]";
const MEDIUM_WHY: &str = "tolerance of the medium's data; state medium under [scatter]";
const TAKEN_WHY: &str = "common practice, no published source: 2 K by a thermometer; state medium under [scatter]";
const HOLD_WHY: &str = "common practice, no published source: 5 % of the time; state hold under [scatter]";
const CARRY_WHY: &str = "common practice, no published source: 30 % of the time; state carry under [scatter]";
const FILM_WHY: &str =
    "common practice, no published source: any place of its range is as likely; state film under [scatter]";
const FRICTION_WHY: &str =
    "common practice, no published source: any value of its range is as likely; state friction under [scatter]";
/// What would make the factor of a seat better known.
const SHAPE_HELP: &str = "; state the length of the seat to have it computed";

/// What the job plans, around which its quantities scatter.
pub(super) struct Planned<'p> {
    /// Time in the medium that chills and in that which warms, s.
    pub(super) holds: (f64, f64),
    /// Factor of the seat's shape.
    pub(super) shape: &'p ShapeFactor,
}

/// Every quantity of a seat, in the order of [`InputKind::ALL`].
pub(super) fn inputs(job: &Job, joint: &Joint<'_>, planned: &Planned<'_>) -> Result<Vec<InputUsed>, ScatterError> {
    let usual = Stated::default();
    let stated = job.scatter.as_ref().unwrap_or(&usual);
    let make = Maker { job, stated };
    let mut all = sizes(job, joint)?.to_vec();
    let chill = [InputKind::ChillMedium, InputKind::ChillFilm, InputKind::ChillHold];
    all.extend(make.treatment(chill, joint.inner.treatment, planned.holds.0)?);
    let warm = [InputKind::WarmMedium, InputKind::WarmFilm, InputKind::WarmHold];
    all.extend(make.treatment(warm, joint.outer.treatment, planned.holds.1)?);
    let treated = joint.inner.treatment.is_some() || joint.outer.treatment.is_some();
    all.extend([
        make.air(treated)?,
        make.carry(treated)?,
        make.friction()?,
        shape_of_seat(planned.shape, length_stated(job, joint.seat)),
    ]);
    Ok(all)
}

fn own(why: Option<&'static str>) -> Option<Cow<'static, str>> {
    why.map(Cow::Borrowed)
}

/// The sizes of a seat: of the inner part, and of the bore of the outer one.
pub(in crate::plan) fn sizes(job: &Job, joint: &Joint<'_>) -> Result<[InputUsed; 2], ScatterError> {
    let usual = Stated::default();
    let stated = job.scatter.as_ref().unwrap_or(&usual);
    let (inner_key, outer_key) = match joint.seat {
        SeatKind::Housing => (&stated.outside, &stated.housing),
        SeatKind::Shaft => (&stated.shaft, &stated.bore),
    };
    let spread = |own: &Option<SizeSpread>| own.as_ref().or(stated.sizes.as_ref()).cloned();
    Ok([
        size(InputKind::InnerSize, joint, &joint.inner, spread(inner_key))?,
        size(InputKind::OuterSize, joint, &joint.outer, spread(outer_key))?,
    ])
}

/// A quantity that does not vary.
fn fixed(kind: InputKind, value: f64) -> InputUsed {
    let nothing = || AnyValue::Text(String::new());
    InputUsed {
        kind,
        name: String::new(),
        distribution: Distribution::Fixed(value),
        shape: "fixed".to_owned(),
        low: nothing(),
        high: nothing(),
        assumed: None,
    }
}

fn size(
    kind: InputKind,
    joint: &Joint<'_>,
    side: &Side<'_>,
    stated: Option<SizeSpread>,
) -> Result<InputUsed, ScatterError> {
    let metres = |size: Nanometres| size.0 as f64 * 1e-9;
    let ends = (metres(side.size.smallest), metres(side.size.largest));
    let nominal = joint.nominal.get::<meter>();
    let name = format!("size of the {}", side.name);
    let failed = |error| ScatterError::Distribution { input: name.clone(), error };
    let assumed = own(stated.is_none().then_some(SIZES_WHY));
    let usual = SizeSpread::Normal(NormalSize { capability: 1.0, unsorted: false, mean: None });
    let (distribution, shape) = match stated.unwrap_or(usual) {
        SizeSpread::Fixed => (Distribution::Fixed(0.5 * (ends.0 + ends.1)), "fixed at the middle".to_owned()),
        SizeSpread::Uniform => (even(ends), "uniform".to_owned()),
        SizeSpread::Measured(sizes) => {
            let sizes: Vec<f64> = sizes.iter().map(|size| size.get::<meter>()).collect();
            let words = format!("{} measured sizes", sizes.len());
            (Distribution::Listed(sizes), words)
        }
        SizeSpread::Normal(NormalSize { capability, unsorted, mean }) => {
            let mean = mean.map(|mean| nominal + mean.get::<meter>());
            let beyond = if unsorted { ", parts beyond the limits fitted too" } else { "" };
            let words = format!("normal, capability {capability}{beyond}");
            (Distribution::capable(ends, capability, mean, unsorted).map_err(failed)?, words)
        }
    };
    let (low, high) = match &distribution {
        Distribution::Listed(_) => distribution.ends(),
        _ => ends,
    };
    let shown = |size: f64| AnyValue::Size(Length::new::<meter>(size));
    Ok(InputUsed { kind, name, distribution, shape, low: shown(low), high: shown(high), assumed })
}

fn even((low, high): (f64, f64)) -> Distribution {
    if high > low { Distribution::Uniform { low, high } } else { Distribution::Fixed(low) }
}

/// A distribution between two ends, and its shape in words; `planned` is what it is without a spread.
fn formed(form: Form, ends: (f64, f64), planned: f64) -> Result<(Distribution, String), ScatterError> {
    Ok(match form {
        Form::Fixed => (Distribution::Fixed(planned), "fixed".to_owned()),
        Form::Uniform => (even(ends), "uniform".to_owned()),
        Form::Normal { capability } => {
            let distribution = Distribution::capable(ends, capability, None, false)
                .map_err(|error| ScatterError::Distribution { input: "a range".to_owned(), error })?;
            (distribution, format!("normal, capability {capability}"))
        }
    })
}

struct Maker<'a> {
    job: &'a Job,
    stated: &'a Stated,
}

impl Maker<'_> {
    fn treatment(
        &self,
        [medium, film, hold]: [InputKind; 3],
        treatment: Option<&Treatment>,
        planned_hold: f64,
    ) -> Result<Vec<InputUsed>, ScatterError> {
        let Some(treatment) = treatment else {
            return Ok([medium, film, hold].map(|kind| fixed(kind, 0.0)).to_vec());
        };
        Ok(vec![
            self.medium(medium, treatment)?,
            self.film(film, treatment)?,
            self.hold(hold, treatment, planned_hold)?,
        ])
    }

    /// Temperature of the medium, or that at which the piece is taken out.
    fn medium(&self, kind: InputKind, treatment: &Treatment) -> Result<InputUsed, ScatterError> {
        let taken_out = match treatment.hold {
            Hold::Reaches(target) => Some(target.get::<kelvin>()),
            Hold::For(_) | Hold::Settled => None,
        };
        let planned = taken_out.unwrap_or(treatment.temperature.get::<kelvin>());
        let boils = matches!(&treatment.film, FilmChoice::OfMedium(Film { law: Law::BoilingNitrogen { .. }, .. }));
        // What is heated by power is always taken out by its temperature; what boils has that of its pressure.
        if taken_out.is_none() && boils {
            return Ok(fixed(kind, planned));
        }
        let tolerance = match taken_out {
            Some(_) => TemperatureInterval::new::<step_kelvin>(THERMOMETER_K),
            None => treatment.medium.temperature().tolerance,
        };
        let usual = Spread { within: tolerance, form: Form::Uniform };
        let spread: Spread<TemperatureInterval> = self.stated.medium.unwrap_or(usual);
        let within = spread.within.get::<step_kelvin>();
        let ends = (planned - within, planned + within);
        let (distribution, shape) = formed(spread.form, ends, planned)?;
        let of = if taken_out.is_some() { "temperature when taken out," } else { "temperature" };
        let shown = |value| AnyValue::Temperature(ThermodynamicTemperature::new::<kelvin>(value));
        Ok(InputUsed {
            kind,
            name: format!("{of} {}", treatment.medium.phrase()),
            distribution,
            shape,
            low: shown(ends.0),
            high: shown(ends.1),
            assumed: own(self.stated.medium.is_none().then_some(if taken_out.is_some() {
                TAKEN_WHY
            } else {
                MEDIUM_WHY
            })),
        })
    }

    fn film(&self, kind: InputKind, treatment: &Treatment) -> Result<InputUsed, ScatterError> {
        // One stated number has no range but that of the emissivity.
        if matches!(treatment.film, FilmChoice::Stated(_)) && !radiates(treatment) {
            return Ok(fixed(kind, 0.0));
        }
        self.place(kind, format!("film {}", treatment.medium.phrase()), 0.0)
    }

    fn air(&self, treated: bool) -> Result<InputUsed, ScatterError> {
        if treated {
            self.place(InputKind::AirFilm, "film of shop air".to_owned(), 1.0)
        } else {
            Ok(fixed(InputKind::AirFilm, 1.0))
        }
    }

    /// A place in a range of films; without a spread it is the end that the plan takes.
    fn place(&self, kind: InputKind, name: String, planned: f64) -> Result<InputUsed, ScatterError> {
        let (distribution, shape) = formed(self.stated.film.unwrap_or(Form::Uniform), (0.0, 1.0), planned)?;
        let end = |words: &str| AnyValue::Text(words.to_owned());
        let assumed = own(self.stated.film.is_none().then_some(FILM_WHY));
        Ok(InputUsed { kind, name, distribution, shape, low: end("slow end"), high: end("quick end"), assumed })
    }

    fn hold(&self, kind: InputKind, treatment: &Treatment, planned: f64) -> Result<InputUsed, ScatterError> {
        // A piece that is taken out by its temperature has no time of its own.
        if matches!(treatment.hold, Hold::Reaches(_)) {
            return Ok(fixed(kind, planned));
        }
        let (spread, assumed) = usual_time(self.stated.hold, HOLD_SHARE, HOLD_WHY);
        time(kind, format!("time {}", treatment.medium.phrase()), (planned, spread, (1.0, f64::INFINITY)), assumed)
    }

    fn carry(&self, treated: bool) -> Result<InputUsed, ScatterError> {
        let planned = self.job.bench.carry.get::<second>();
        if !treated {
            return Ok(fixed(InputKind::Carry, planned));
        }
        let (spread, assumed) = usual_time(self.stated.carry, CARRY_SHARE, CARRY_WHY);
        time(InputKind::Carry, "time to the seat".to_owned(), (planned, spread, (0.0, LONGEST_ON_BENCH_S)), assumed)
    }

    fn friction(&self) -> Result<InputUsed, ScatterError> {
        let (low, high) = self.job.press.friction;
        if high <= low {
            return Ok(fixed(InputKind::Friction, low));
        }
        let form = self.stated.friction.unwrap_or(Form::Uniform);
        let (distribution, shape) = formed(form, (low, high), 0.5 * (low + high))?;
        Ok(InputUsed {
            kind: InputKind::Friction,
            name: "friction".to_owned(),
            distribution,
            shape,
            low: AnyValue::Number(low),
            high: AnyValue::Number(high),
            assumed: own(self.stated.friction.is_none().then_some(FRICTION_WHY)),
        })
    }
}

fn usual_time(stated: Option<Spread<Within>>, share: f64, why: &'static str) -> (Spread<Within>, Option<&'static str>) {
    let usual = Spread { within: Within::Share(crate::quantity::Ratio::new::<ratio>(share)), form: Form::Uniform };
    (stated.unwrap_or(usual), stated.is_none().then_some(why))
}

fn time(
    kind: InputKind,
    name: String,
    (planned, spread, allowed): (f64, Spread<Within>, (f64, f64)),
    assumed: Option<&'static str>,
) -> Result<InputUsed, ScatterError> {
    let within = match spread.within {
        Within::Time(time) => time.get::<second>(),
        Within::Share(share) => planned * share.get::<ratio>(),
    };
    let kept = |value: f64| value.max(allowed.0.min(planned)).min(allowed.1);
    let ends = (kept(planned - within), kept(planned + within));
    let (distribution, shape) = formed(spread.form, ends, planned)?;
    let shown = |value| AnyValue::Duration(Time::new::<second>(value));
    Ok(InputUsed { kind, name, distribution, shape, low: shown(ends.0), high: shown(ends.1), assumed: own(assumed) })
}

fn shape_of_seat(shape: &ShapeFactor, length_stated: bool) -> InputUsed {
    let (low, high) = shape.force;
    if high <= low {
        return fixed(InputKind::Shape, low);
    }
    let help = if length_stated { "" } else { SHAPE_HELP };
    InputUsed {
        kind: InputKind::Shape,
        name: "shape of the seat".to_owned(),
        distribution: even((low, high)),
        shape: "uniform".to_owned(),
        low: AnyValue::Number(low),
        high: AnyValue::Number(high),
        assumed: shape.known_words().map(|known| format!("{known}, any value as likely{help}").into()),
    }
}

/// What a treated piece draws: medium, film and time.
pub(super) fn piece_kinds(inner: bool) -> [InputKind; 3] {
    if inner {
        [InputKind::ChillMedium, InputKind::ChillFilm, InputKind::ChillHold]
    } else {
        [InputKind::WarmMedium, InputKind::WarmFilm, InputKind::WarmHold]
    }
}
