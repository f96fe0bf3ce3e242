//! How long one history takes: a ring from the freezer over the bench into the bore of a warm boss, one end of every range.

#![allow(clippy::unwrap_used, reason = "sizes and temperatures are given here and lie in every range")]

use seatwise::quantity::{Area, Length, Power, ThermodynamicTemperature, Time};
use seatwise::stock::{Library, Material};
use seatwise::thermal::bore::{Exchange, Gap, Joint, Placement, SeatBody, SeatSizes};
use seatwise::thermal::{
    AirAround, Axis, Boss, ConductionPath, Exchange as Face, FilmLaw, Inside, MoistAir, Network, NetworkBody, Partner,
    Ring, RoundPart, Shape, Wrap, standard_pressure,
};
use uom::si::length::{meter, millimeter};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{hour, minute};

fn main() {
    divan::main();
}

fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}

fn celsius(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(t)
}

/// A body alone in air of one temperature; the air of the shop is moist.
fn end(
    part: (&RoundPart, &Shape, &Material),
    from: ThermodynamicTemperature,
    air: f64,
    time: Time,
) -> ThermodynamicTemperature {
    let (round, shape, material) = part;
    let sea_level = standard_pressure(Length::new::<meter>(0.0)).unwrap();
    let around = AirAround { air: celsius(air), pressure: sea_level, air_speed: None, axis: Axis::Vertical };
    let film = FilmLaw::in_air(round, &around, celsius(if air > 0.0 { -18.0 } else { 20.0 })).unwrap();
    let moisture = (air > 0.0).then(|| MoistAir::new(celsius(air), 0.5, sea_level).unwrap());
    let network = Network {
        bodies: vec![NetworkBody {
            mass: shape.volume * material.density(),
            heat_capacity: material.heat_capacity(),
            start: from,
            power: Power::default(),
        }],
        surroundings: vec![celsius(air)],
        exchanges: vec![Face {
            body: 0,
            with: Partner::Surroundings(0),
            area: shape.area,
            film: (&film).into(),
            emissivity: 0.2,
            inside: Some(Inside { path: shape.path, conductivity: material.conductivity() }),
            wrap: Wrap::none(),
            moisture,
        }],
        links: Vec::new(),
    };
    network.run(time).unwrap().end()[0]
}

fn body<'a>(
    shape: &Shape,
    material: &'a Material,
    start: ThermodynamicTemperature,
    film: &FilmLaw,
    seat: Area,
) -> SeatBody<'a> {
    SeatBody {
        mass: shape.volume * material.density(),
        heat_capacity: material.heat_capacity(),
        conductivity: material.conductivity(),
        expansion: material.expansion(),
        emissivity: 0.3,
        to_joint: ConductionPath::one_face(mm(5.0)),
        to_air: shape.path,
        free_area: shape.area - seat,
        film: film.at(start).unwrap(),
        radiates: true,
        start,
    }
}

#[divan::bench]
fn chill_carry_bench_and_bore(bencher: divan::Bencher) {
    let library = Library::default();
    let (steel, alloy) = (library.material("bearing-steel").unwrap(), library.material("cast-aluminium").unwrap());
    let ring = Ring { bore: mm(52.0), outside: mm(62.0), width: mm(16.0) };
    let boss = Boss { bore: mm(62.0), outside: mm(90.0), length: mm(20.0), back_wall: None };
    let (ring_shape, boss_shape) = (ring.shape().unwrap(), boss.shape().unwrap());
    let seat: Area = std::f64::consts::PI * mm(62.0) * mm(16.0);
    let film =
        FilmLaw::constant(uom::si::f64::HeatTransfer::new::<uom::si::heat_transfer::watt_per_square_meter_kelvin>(8.0))
            .unwrap();
    bencher.bench(|| {
        let part = (&RoundPart::Ring(ring), &ring_shape, &steel);
        let cold = end(divan::black_box(part), celsius(20.0), -18.0, Time::new::<hour>(2.0));
        let carried = end(part, cold, 20.0, Time::new::<minute>(0.5));
        let warm = end(part, cold, 20.0, Time::new::<hour>(4.0));
        let exchange = Exchange {
            inner: body(&ring_shape, &steel, carried, &film, seat),
            outer: body(&boss_shape, &alloy, celsius(80.0), &film, seat),
            joint: Joint { diameter: mm(62.0), length: mm(16.0) },
            gap: Gap::usual(Placement::Concentric),
            shop: celsius(20.0),
        };
        let sizes = SeatSizes { inner_at_20: mm(62.0), outer_at_20: mm(61.961) };
        (warm, exchange.run(sizes, Time::new::<hour>(4.0)).unwrap().end())
    });
}
