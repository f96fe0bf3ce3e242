//! A piece in its surroundings for a time: one body, or the three of a bearing.

use super::PlanError;
use super::subject::Subject;
use super::surroundings::Surroundings;
use crate::quantity::{Area, Mass, Power, TemperatureInterval, ThermodynamicTemperature, Time};
use crate::thermal::{
    BearingHistory, BearingPart, BearingPlan, BearingSurroundings, Exchange, Inside, Network, NetworkBody,
    NetworkHistory, Partner,
};
use uom::si::f64::Energy;
use uom::si::mass::kilogram;

/// A piece that is followed for a time.
pub(super) enum Run {
    /// As one body.
    One(NetworkHistory),
    /// As outer ring, rolling elements and inner ring.
    Three(BearingHistory),
}

/// What a piece is put into.
pub(super) struct Place {
    /// What is around it.
    pub(super) around: Surroundings,
    /// A plate that touches one face, the rest being in `around`.
    pub(super) plate: Option<Surroundings>,
    /// Heat put in: into the inner ring of a bearing.
    pub(super) power: Power,
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
                    },
                    time,
                };
                Ok(Self::Three(rings.run(&plan)?))
            }
            _ => Ok(Self::One(one_body(subject, place, start.first().copied().unwrap_or_default()).run(time)?)),
        }
    }

    fn network(&self) -> &NetworkHistory {
        match self {
            Self::One(history) => history,
            Self::Three(history) => history.network(),
        }
    }

    /// Number of the body whose temperature counts for the fit.
    fn index(&self, part: BearingPart) -> usize {
        match (self, part) {
            (Self::One(_), _) | (Self::Three(_), BearingPart::OuterRing) => 0,
            (Self::Three(_), BearingPart::RollingElements) => 1,
            (Self::Three(_), BearingPart::InnerRing) => 2,
        }
    }

    /// Temperature (K) of `part` at a time (s); the end value beyond the end.
    pub(super) fn kelvin_at(&self, part: BearingPart, time: f64) -> f64 {
        self.network().kelvin_at(self.index(part), time)
    }

    /// First time at which `part` has this temperature.
    pub(super) fn first_time_at(&self, part: BearingPart, temperature: ThermodynamicTemperature) -> Option<Time> {
        self.network().first_time_at(self.index(part), temperature)
    }

    /// Temperatures at the end, with which the next run may begin.
    pub(super) fn end(&self) -> Vec<ThermodynamicTemperature> {
        self.network().end()
    }

    /// Heat that the first of the surroundings has taken up by a time.
    pub(super) fn heat_given(&self, until: Time) -> Energy {
        self.network().heat_to(0, until).unwrap_or_default()
    }

    /// Water and frost that settled on the piece.
    pub(super) fn water(&self) -> Mass {
        let bodies = match self {
            Self::One(_) => 1,
            Self::Three(_) => 3,
        };
        (0..bodies).map(|body| self.network().water_on(body).mass()).fold(Mass::new::<kilogram>(0.0), |a, b| a + b)
    }

    /// Largest difference of the inner ring from the outer one; none for one body.
    pub(super) fn ring_difference(&self) -> Option<TemperatureInterval> {
        match self {
            Self::One(_) => None,
            Self::Three(history) => Some(history.largest_ring_difference().1),
        }
    }
}

fn one_body<'a>(subject: &'a Subject<'_>, place: &'a Place, start: ThermodynamicTemperature) -> Network<'a> {
    let inside = Some(Inside { path: subject.shape.path, conductivity: subject.material.conductivity() });
    let exchange = |around: &'a Surroundings, index: usize, area: Area| Exchange {
        body: 0,
        with: Partner::Surroundings(index),
        area,
        film: (&around.film).into(),
        emissivity: around.emissivity,
        inside,
        wrap: around.wrap,
        moisture: around.moisture,
    };
    let (mut surroundings, mut exchanges) = (vec![place.around.temperature], Vec::with_capacity(2));
    let whole = subject.shape.area;
    match &place.plate {
        None => exchanges.push(exchange(&place.around, 0, whole)),
        Some(plate) => {
            surroundings.push(plate.temperature);
            exchanges.push(exchange(&place.around, 0, whole - subject.face));
            exchanges.push(exchange(plate, 1, subject.face));
        }
    }
    let heat_capacity = subject.material.heat_capacity();
    let body = NetworkBody { mass: subject.mass, heat_capacity, start, power: place.power };
    Network { bodies: vec![body], surroundings, exchanges, links: Vec::new() }
}
