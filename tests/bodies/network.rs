//! Several bodies: exact and independent solutions, finite elements, limits, the account of heat.

use super::*;

#[test]
fn two_bodies_in_contact_follow_the_closed_form() {
    prove("Two bodies in contact");
}

#[test]
fn three_bodies_with_radiation_and_a_contact_that_varies_follow_an_independent_solver() {
    prove("Three bodies, radiation, varying contact");
}

#[test]
fn one_body_is_the_history_of_one_lumped_body() {
    let (capacity, conductivity) = (rising_capacity(), constant(35.0));
    let path = ConductionPath::both_faces(mm(10.0));
    for (surroundings, h, emissivity) in [(255.15, 8.0, 0.0), (77.4, 150.0, 0.3), (393.15, 20.0, 0.8)] {
        let lumped = Body {
            mass: Mass::new::<kilogram>(0.3),
            area: Area::new::<square_meter>(0.01),
            heat_capacity: &capacity,
            conductivity: &conductivity,
            emissivity,
            path,
        };
        let stage = Stage {
            surroundings: at_kelvin(surroundings),
            film: film(h).into(),
            radiates: emissivity > 0.0,
            power: watts(0.0),
            until: Until::Elapsed(seconds(2400.0)),
        };
        let one = History::run(&lumped, at_kelvin(293.15), &[stage]).unwrap();
        let inside = Some(Inside { path, conductivity: &conductivity });
        let exchange = Exchange { emissivity, inside, ..surface(0, 0.01, h) };
        let network = alone(body(0.3, &capacity, 293.15), surroundings, exchange).run(seconds(2400.0)).unwrap();
        for i in 0..=240 {
            let t = f64::from(i) * 10.0;
            let want = one.temperature_at(seconds(t)).unwrap().get::<kelvin>();
            assert!((kelvin_at(&network, 0, t) - want).abs() < 2e-3, "{surroundings} K, {t} s");
        }
        let target = at_kelvin(0.5 * (293.15 + surroundings));
        let time = network.first_time_at(0, target).unwrap();
        assert!((time - one.first_time_at(target).unwrap()).abs() < seconds(0.02));
    }
}

/// Largest distance of three linked bodies from one lumped body of all mass and area, K.
fn distance_from_one(conductance: f64) -> f64 {
    let capacity = rising_capacity();
    let network = Network {
        bodies: vec![body(0.1, &capacity, 293.15), body(0.03, &capacity, 293.15), body(0.06, &capacity, 293.15)],
        surroundings: vec![at_kelvin(77.36)],
        exchanges: vec![surface(0, 5e-3, 150.0), surface(1, 2e-3, 150.0), surface(2, 2.5e-3, 150.0)],
        links: vec![link(0, 1, conductance), link(1, 2, conductance)],
    };
    let whole = alone(body(0.19, &capacity, 293.15), 77.36, surface(0, 9.5e-3, 150.0)).run(seconds(120.0)).unwrap();
    let parts = network.run(seconds(120.0)).unwrap();
    let off = |body: usize, t: f64| (kelvin_at(&parts, body, t) - kelvin_at(&whole, 0, t)).abs();
    (1..=60).flat_map(|t| [0, 1, 2].map(|body| off(body, f64::from(2 * t)))).fold(0.0, f64::max)
}

#[test]
fn bodies_in_ever_better_contact_become_one() {
    let distances = [1.0, 10.0, 100.0, 1000.0].map(distance_from_one);
    assert!(distances[0] > 5.0, "{distances:?}");
    for pair in distances.windows(2).skip(1) {
        // The difference falls in proportion to 1/G.
        assert!((pair[1] / pair[0] - 0.1).abs() < 0.03, "{distances:?}");
    }
    assert!(distances[3] < 0.02, "{distances:?}");
}

#[test]
fn a_boiling_curve_is_followed_through_the_collapse_of_the_film() {
    prove("One body through the collapse of boiling");
    let history = through_the_collapse();
    let account = history.account();
    let share = account.missing().get::<joule>() / account.stored.get::<joule>();
    assert!(share.abs() < 1e-3, "{share}");
}

#[test]
fn nucleate_boiling_on_a_light_part_beside_a_slow_one_is_followed() {
    // 20 kW/(m² K) on 0.1 kg: 10 times a second, while a heavy body in a wrap takes minutes.
    let capacity = rising_capacity();
    let network = Network {
        bodies: vec![body(0.1, &capacity, 293.15), body(2.0, &capacity, 293.15)],
        surroundings: vec![at_kelvin(77.36)],
        exchanges: vec![surface(0, 0.01, 2e4), surface(1, 0.03, 20.0)],
        links: vec![link(0, 1, 0.5)],
    };
    let history = network.run(seconds(600.0)).unwrap();
    // Quasi-steady: what comes over the contact goes into the liquid.
    let slow = history.end()[1].get::<kelvin>();
    let expected = 77.36 + 0.5 * (slow - 77.36) / 200.5;
    assert!((history.end()[0].get::<kelvin>() - expected).abs() < 0.01, "{slow}");
    let account = history.account();
    assert!((account.missing() / account.stored).value.abs() < 1e-3);
}

#[test]
fn rings_and_housing_follow_finite_elements_within_one_kelvin() {
    let checks = prove("Rings and bosses in air, baths, on a plate");
    let off_the_plate = checks.iter().filter(|check| !check.row.contains("hot plate"));
    let worst = off_the_plate.map(|check| (check.computed - check.expected).abs()).fold(0.0, f64::max);
    // The body without the resistance inside is 0.8 K off at most.
    assert!(worst < 0.5, "{worst}");
}

#[test]
fn power_warms_a_body_without_surroundings_by_what_it_brings() {
    let capacity = rising_capacity();
    let mut network = Network { bodies: vec![body(0.5, &capacity, 250.0)], ..Network::default() };
    network.bodies[0].power = watts(100.0);
    let end = network.run(seconds(200.0)).unwrap().end()[0].get::<kelvin>();
    // ∫c dT of the straight line: 100 W × 200 s / 0.5 kg.
    let c = |t: f64| 150.0 + (t - 70.0) * 370.0 / 330.0;
    assert!((0.5 * (c(250.0) + c(end)) * (end - 250.0) - 40_000.0).abs() < 1.0, "{end}");
}

#[test]
fn stages_can_follow_one_another() {
    let capacity = rising_capacity();
    let run = |start: f64, time: f64| {
        alone(body(0.2, &capacity, start), 255.15, surface(0, 0.01, 8.0)).run(seconds(time)).unwrap()
    };
    let first = run(293.15, 400.0);
    let later = run(first.end()[0].get::<kelvin>(), 500.0);
    assert!((later.end()[0].get::<kelvin>() - kelvin_at(&run(293.15, 900.0), 0, 900.0)).abs() < 1e-3);
    // At rest the heat still adds up.
    let rest = run(293.15, 1e7);
    assert!((rest.end()[0].get::<kelvin>() - 255.15).abs() < 1e-4, "{rest:?}");
    assert!((rest.account().missing() / rest.account().stored).value.abs() < 1e-5);
    let nothing = run(293.15, 0.0);
    assert!((nothing.end()[0].get::<kelvin>() - 293.15).abs() < 1e-12);
    assert!((kelvin_at(&nothing, 0, 0.0) - 293.15).abs() < 1e-12);
}

#[test]
fn what_cannot_be_is_refused_with_advice() {
    let capacity = rising_capacity();
    let good = || alone(body(0.2, &capacity, 293.15), 255.15, surface(0, 0.01, 8.0));
    let said = |network: Network| network.run(seconds(60.0)).unwrap_err().to_string();
    let with = |change: fn(&mut Network)| {
        let mut network = good();
        change(&mut network);
        said(network)
    };
    assert!(with(|n| n.exchanges[0].body = 1).contains("body of a surface"));
    assert!(with(|n| n.exchanges[0].with = Partner::Surroundings(1)).contains("surroundings of a surface is 1"));
    assert!(with(|n| n.exchanges[0].with = Partner::Body(3)).contains("faces is 3"));
    assert!(with(|n| n.links.push(link(0, 1, 1.0))).contains("contact is 1"));
    assert!(with(|n| n.links.push(link(0, 0, f64::NAN))).contains("conductance"));
    assert!(with(|n| n.bodies[0].mass = Mass::new::<kilogram>(0.0)).contains("mass"));
    assert!(with(|n| n.bodies[0].power = watts(f64::INFINITY)).contains("power"));
    assert!(with(|n| n.bodies[0].start = at_kelvin(60.0)).contains("heat capacity"));
    assert!(with(|n| n.surroundings[0] = at_kelvin(-1.0)).contains("temperature"));
    assert!(with(|n| n.exchanges[0].emissivity = 1.1).contains("emissivity"));
    // Strong heating leaves the table of the heat capacity.
    assert!(with(|n| n.bodies[0].power = watts(1e3)).contains("heat capacity"));
    assert!(good().run(seconds(-1.0)).is_err());
    let history = good().run(seconds(60.0)).unwrap();
    assert!(history.temperature_at(1, seconds(1.0)).is_err());
    assert!(history.temperature_at(0, seconds(61.0)).is_err());
    assert!(history.heat_to(1, seconds(1.0)).is_err());
    assert_eq!(history.first_time_at(0, at_kelvin(200.0)), None);
}

/// Any three bodies in any medium: sizes of 20 g to 5 kg, air to boiling, contacts from none to good.
#[derive(Clone, Debug)]
struct Any {
    masses: [f64; 3],
    areas: [f64; 3],
    start: [f64; 3],
    surroundings: f64,
    h: f64,
    emissivity: f64,
    contacts: [f64; 2],
    thickness: f64,
    conductivity: f64,
    capacity: f64,
    time: f64,
}

fn any() -> impl Strategy<Value = Any> {
    let three = || [0.0..1.0_f64, 0.0..1.0_f64, 0.0..1.0_f64];
    let log = |from: f64, to: f64| (from.ln()..to.ln()).prop_map(f64::exp);
    let sizes = (three(), three(), [90.0..480.0_f64, 90.0..480.0_f64, 90.0..480.0_f64]);
    let around = (90.0..480.0_f64, log(3.0, 2000.0), 0.0..0.9_f64);
    let inside = ([log(0.01, 20.0), log(0.01, 20.0)], 1.0..30.0_f64, 12.0..200.0_f64, 0.3..1.5_f64, log(1.0, 3000.0));
    (sizes, around, inside).prop_map(|((m, a, start), (surroundings, h, emissivity), inside)| {
        let (contacts, thickness, conductivity, capacity, time) = inside;
        let masses = m.map(|x| 0.02 * 250.0_f64.powf(x));
        // Area in proportion to mass^(2/3), within a factor of two.
        let areas = [0, 1, 2].map(|i| 0.03 * masses[i].powf(2.0 / 3.0) * (0.5 + 1.5 * a[i]));
        Any { masses, areas, start, surroundings, h, emissivity, contacts, thickness, conductivity, capacity, time }
    })
}

/// What the solver may add up to, as a share of the widest difference: three steps of the error allowed to one.
const NOISE: f64 = 3e-5;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn the_heat_adds_up_and_no_body_leaves_the_range(any in any()) {
        let capacity = Curve::new(
            &[(70.0, 160.0), (120.0, 300.0), (200.0, 400.0), (293.15, 460.0), (500.0, 530.0)]
                .map(|(t, c)| (t, c * any.capacity)),
        ).unwrap();
        let conductivity = Curve::new(&[(70.0, 0.6 * any.conductivity), (500.0, any.conductivity)]).unwrap();
        let inside = Some(Inside { path: ConductionPath::both_faces(mm(any.thickness)), conductivity: &conductivity });
        let part = |i: usize| body(any.masses[i], &capacity, any.start[i]);
        let exchange = |i: usize| Exchange { emissivity: any.emissivity, inside, ..surface(i, any.areas[i], any.h) };
        let network = Network {
            bodies: vec![part(0), part(1), part(2)],
            surroundings: vec![at_kelvin(any.surroundings)],
            exchanges: vec![exchange(0), exchange(1), exchange(2)],
            links: vec![link(0, 1, any.contacts[0]), link(1, 2, any.contacts[1])],
        };
        let history = network.run(seconds(any.time)).unwrap();
        // m ∫c dT by the trapezoid rule on the public curve, independent of the crate's own integral.
        let gained = |i: usize| {
            let (from, to) = (any.start[i], history.end()[i].get::<kelvin>());
            let (count, width) = (2000, (to - from) / 2000.0);
            let c = |k: i32| capacity.at(from + f64::from(k) * width).unwrap();
            let inner: f64 = (1..count).map(c).sum();
            any.masses[i] * width * (inner + 0.5 * (c(0) + c(count)))
        };
        let all = [gained(0), gained(1), gained(2)];
        let turned_over = all.iter().map(|heat| heat.abs()).sum::<f64>();
        let lost = history.heat_to(0, history.length()).unwrap().get::<joule>();
        prop_assert!((all.iter().sum::<f64>() + lost).abs() < 1e-3 * turned_over, "{:?} {}", all, lost);
        let missing = history.account().missing().get::<joule>();
        prop_assert!(missing.abs() < 1e-3 * turned_over, "{}", missing);
        let (low, high) = any.start.iter().fold((any.surroundings, any.surroundings), |(l, h), t| (l.min(*t), h.max(*t)));
        for i in 0..3 {
            for k in 0..=50 {
                let t = kelvin_at(&history, i, any.time * f64::from(k) / 50.0);
                prop_assert!(t > low - NOISE * (high - low) && t < high + NOISE * (high - low), "{} {}", i, t);
            }
        }
    }

    #[test]
    fn more_film_brings_every_body_nearer(any in any(), more in 1.1..5.0_f64) {
        let capacity = rising_capacity();
        let end = |h: f64| {
            let network = Network {
                bodies: any.masses.map(|mass| body(mass, &capacity, 293.15)).to_vec(),
                surroundings: vec![at_kelvin(100.0)],
                exchanges: [0, 1, 2].map(|i| surface(i, any.areas[i], h)).to_vec(),
                links: vec![link(0, 1, any.contacts[0]), link(1, 2, any.contacts[1])],
            };
            network.run(seconds(any.time)).unwrap().end()
        };
        for (less, more) in end(any.h).into_iter().zip(end(any.h * more)) {
            prop_assert!(more.get::<kelvin>() <= less.get::<kelvin>() + NOISE * 193.15, "{more:?} {less:?}");
        }
    }
}
