//! A piece in its surroundings for a time: one body, one that meets two surroundings, or the three of a bearing.

use super::PlanError;
use super::place::Place;
use super::subject::Subject;
use super::surroundings::Surroundings;
use crate::quantity::{Area, Mass, Power, TemperatureInterval, ThermodynamicTemperature, Time};
use crate::stock::Curve;
use crate::thermal::{
    BearingHistory, BearingPart, BearingPlan, BearingSurroundings, Body, ConductionPath, Exchange, History, Inside,
    Network, NetworkBody, NetworkHistory, Partner, Stage, Until,
};
use uom::si::energy::joule;
use uom::si::f64::Energy;
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// A piece that is followed for a time.
pub(super) enum Run {
    /// As one body in one fluid.
    One(Lump),
    /// As one body on a plate, in a wrap, in moist air, or in a film that depends on the surface itself.
    Faced(NetworkHistory),
    /// As outer ring, rolling elements and inner ring.
    Three(BearingHistory),
}

/// One body in one fluid.
pub(super) struct Lump {
    history: History,
    mass: Mass,
    power: Power,
}

impl Run {
    /// Follows `subject` from `start`; three temperatures make it a bearing of three bodies.
    pub(super) fn new(
        subject: &Subject<'_>,
        place: &Place,
        start: &[ThermodynamicTemperature],
        time: Time,
    ) -> Result<Self, PlanError> {
        match (start, &subject.rings) {
            ([outer, balls, inner], Some(rings)) => {
                let plan = BearingPlan {
                    heat_capacity: subject.material.heat_capacity(),
                    conductivity: subject.material.conductivity(),
                    start: [*outer, *balls, *inner],
                    power: [Power::default(), Power::default(), place.power],
                    surroundings: BearingSurroundings {
                        temperature: place.around.temperature,
                        film: (&place.around.film).into(),
                        emissivity: place.around.emissivity,
                        wrap: place.around.wrap,
                        moisture: place.around.moisture,
                        store: place.medium.as_ref(),
                    },
                    time,
                };
                Ok(Self::Three(rings.run(&plan)?))
            }
            _ => {
                let start = start.first().copied().unwrap_or_default();
                if place.is_simple(subject, start) {
                    Ok(Self::lump(subject, place, start, Until::Elapsed(time))?.0)
                } else {
                    Ok(Self::Faced(one_body(subject, place, start).run(time)?))
                }
            }
        }
    }

    /// Follows a body for which [`Place::is_simple`] holds, and gives the time at which the stage ended.
    pub(super) fn lump(
        subject: &Subject<'_>,
        place: &Place,
        start: ThermodynamicTemperature,
        until: Until,
    ) -> Result<(Self, Time), PlanError> {
        let body = Body {
            mass: subject.mass,
            area: subject.shape.area,
            heat_capacity: subject.material.heat_capacity(),
            conductivity: subject.material.conductivity(),
            emissivity: place.around.emissivity,
            path: subject.shape.path,
        };
        let stage = Stage {
            surroundings: place.around.temperature,
            film: (&place.around.film).into(),
            radiates: place.around.emissivity > 0.0,
            power: place.power,
            until,
        };
        let history = History::run(&body, start, &[stage])?;
        let ends_at = history.end().0;
        Ok((Self::One(Lump { history, mass: subject.mass, power: place.power }), ends_at))
    }

    /// Temperature (K) of `part` at a time (s); the end value beyond the end.
    pub(super) fn kelvin_at(&self, part: BearingPart, time: f64) -> f64 {
        match self {
            Self::One(lump) => lump.history.kelvin_at(time),
            Self::Faced(history) => history.kelvin_at(0, time),
            Self::Three(history) => history.network().kelvin_at(part.index(), time),
        }
    }

    /// First time at which `part` has this temperature.
    pub(super) fn first_time_at(&self, part: BearingPart, temperature: ThermodynamicTemperature) -> Option<Time> {
        match self {
            Self::One(lump) => lump.history.first_time_at(temperature),
            Self::Faced(history) => history.first_time_at(0, temperature),
            Self::Three(history) => history.first_time_at(part, temperature),
        }
    }

    /// Temperatures at the end, with which the next run may begin.
    pub(super) fn end(&self) -> Vec<ThermodynamicTemperature> {
        match self {
            Self::One(lump) => vec![lump.history.end().1],
            Self::Faced(history) => history.end(),
            Self::Three(history) => history.end().to_vec(),
        }
    }

    /// By how much the medium has come nearer to the piece at most; none where it stays as it is.
    pub(super) fn medium_drift(&self) -> Option<TemperatureInterval> {
        let medium = match self {
            Self::One(_) => return None,
            Self::Faced(history) => (history, 1),
            Self::Three(history) => (history.network(), 3),
        };
        medium.0.largest_change(medium.1).ok().map(|(_, change)| change)
    }

    /// Heat that the first of the surroundings has taken up by a time, from a piece of this `heat_capacity`; nothing is
    /// known of it where the medium is a body of its own.
    pub(super) fn heat_given(&self, heat_capacity: &Curve, until: Time) -> Energy {
        match self {
            Self::One(lump) => lump.heat_given(heat_capacity, until),
            Self::Faced(history) => history.heat_to(0, until).unwrap_or_default(),
            Self::Three(history) => history.network().heat_to(0, until).unwrap_or_default(),
        }
    }

    /// Water and frost that settled on the piece.
    pub(super) fn water(&self) -> Mass {
        let on = |network: &NetworkHistory, bodies: usize| {
            (0..bodies).map(|body| network.water_on(body).mass()).fold(Mass::new::<kilogram>(0.0), |a, b| a + b)
        };
        match self {
            Self::One(_) => Mass::new::<kilogram>(0.0),
            Self::Faced(history) => on(history, 1),
            Self::Three(history) => on(history.network(), 3),
        }
    }

    /// Largest difference of the inner ring from the outer one; none for one body.
    pub(super) fn ring_difference(&self) -> Option<TemperatureInterval> {
        match self {
            Self::One(_) | Self::Faced(_) => None,
            Self::Three(history) => Some(history.largest_ring_difference().1),
        }
    }
}

impl Lump {
    /// What was put in less what the body keeps, `P t - m ∫c dT`.
    fn heat_given(&self, heat_capacity: &Curve, until: Time) -> Energy {
        let start = self.history.start().get::<kelvin>();
        let now = self.history.kelvin_at(until.get::<second>());
        let kept = self.mass.get::<kilogram>() * heat_capacity.integral_inside(start, now);
        self.power * until - Energy::new::<joule>(kept)
    }
}

fn one_body<'a>(subject: &'a Subject<'_>, place: &'a Place, start: ThermodynamicTemperature) -> Network<'a> {
    let body =
        NetworkBody { mass: subject.mass, heat_capacity: subject.material.heat_capacity(), start, power: place.power };
    let mut network = Network { bodies: vec![body], ..Network::default() };
    let medium = with_medium(&mut network, place);
    let exchange = |around: &'a Surroundings, with: Partner, (area, path): (Area, ConductionPath)| Exchange {
        body: 0,
        with,
        area,
        film: (&around.film).into(),
        emissivity: around.emissivity,
        inside: Some(Inside { path, conductivity: subject.material.conductivity() }),
        wrap: around.wrap,
        moisture: around.moisture,
    };
    let free = (subject.shape.area - place.covered, subject.shape.path);
    network.exchanges.push(exchange(&place.around, medium, free));
    if let Some(beside) = &place.beside {
        let with = if beside.of_medium { medium } else { surrounded_by(&mut network, beside.what.temperature) };
        let way = (beside.area, beside.path.unwrap_or(subject.shape.path));
        network.exchanges.push(exchange(&beside.what, with, way));
    }
    network
}

/// What is around the piece, as a body of its own where it warms or cools.
fn with_medium<'a>(network: &mut Network<'a>, place: &'a Place) -> Partner {
    match &place.medium {
        Some(medium) => Partner::Body(network.add_medium(medium)),
        None => surrounded_by(network, place.around.temperature),
    }
}

fn surrounded_by(network: &mut Network<'_>, temperature: ThermodynamicTemperature) -> Partner {
    network.surroundings.push(temperature);
    Partner::Surroundings(network.surroundings.len() - 1)
}
