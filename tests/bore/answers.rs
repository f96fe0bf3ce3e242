//! The answers that a shop asks for: seconds until it grips, held until when, is chilling worth it, what frees it.

use super::*;

/// Boss of 70 mm at 100 °C round the outer ring of a 52 by 15 mm bearing (wall 3 mm), 30 um interference: the job in
/// which chilling the ring takes the time away.
fn thin_boss(ring_start: f64) -> Seat {
    let mut seat = light_alloy(70.0, ring_start, 100.0, 30.0);
    seat.inner = ring(STEEL, (23.0, 26.0), 15.0, ring_start);
    seat
}

#[test]
fn a_chilled_ring_grips_in_seconds_where_the_warm_boss_alone_leaves_minutes() {
    let seat = thin_boss(-18.0);
    // Rough figures for the touching ring, worked out separately: 6 s and 2 min. Order of size only.
    for (placement, expected) in [(Placement::OneSide, 3.0..9.0), (Placement::Concentric, 3.0..40.0)] {
        let both = seat.exchange(Gap::usual(placement)).chilling(seat.sizes(), seconds(3600.0)).unwrap();
        assert!(both.shortens());
        let (chilled, unchilled) = (grip(&both.chilled).unwrap(), grip(&both.unchilled).unwrap());
        assert!(expected.contains(&chilled), "{placement:?}: {chilled} s");
        assert!((90.0..150.0).contains(&unchilled), "{placement:?}: {unchilled} s");
        assert!(matches!(both.chilled.course, Course::GripsWhileEvening { .. }), "{:?}", both.chilled.course);
        assert!(matches!(both.unchilled.course, Course::HeldUntilLock { .. }), "{:?}", both.unchilled.course);
        assert_eq!(both.chilled.meets_above_lock(), Some(false));
        assert_eq!(both.unchilled.meets_above_lock(), Some(true));
    }
}

#[test]
fn a_thick_boss_holds_the_ring_free_for_minutes_and_grips_at_the_lock_temperature() {
    let seat = Seat { outer: boss(ALUMINIUM, (26.0, 45.0), 20.0, 100.0), ..thin_boss(-18.0) };
    let insertion = seat.run(Placement::OneSide, 3600.0);
    let Course::HeldUntilLock { met, locks } = insertion.course else { panic!("{:?}", insertion.course) };
    assert!(met < seconds(20.0) && locks > seconds(120.0), "{met:?} {locks:?}");
    // 30 um over 52 mm x 10.7e-6: 54 K above 20 °C, and both parts are there when it grips.
    let (inner, outer) = in_celsius(insertion.temperatures_at(locks).unwrap());
    let lock = insertion.lock().unwrap().get::<degree_celsius>();
    assert!((lock - 73.99).abs() < 0.05, "{lock}");
    assert!((inner - lock).abs() < 0.3 && (outer - lock).abs() < 0.3, "{inner} {outer} {lock}");
    assert!(insertion.clearance_at(locks).unwrap().abs() < um(0.001));
}

/// The parts have met when they differ by a set, small amount: the greater of an absolute bound and a share of the difference
/// at the start, and before that by more.
#[test]
fn the_parts_meet_when_their_temperatures_do() {
    for (outside, start) in [(90.0, -18.0), (90.0, 20.0), (120.0, -60.0), (100.0, 0.0)] {
        let seat = Seat { outer: boss(ALUMINIUM, (26.0, 0.5 * outside), 20.0, 100.0), ..thin_boss(start) };
        let insertion = seat.run(Placement::OneSide, 3600.0);
        let meeting = insertion.meeting.unwrap();
        let apart = |t| {
            let (inner, outer) = in_celsius(insertion.temperatures_at(t).unwrap());
            outer - inner
        };
        let left = apart(meeting.at) / (100.0 - start);
        assert!(left > 0.0 && left < 0.05, "{left} of the difference is left at {:?}", meeting.at);
        // What is left fades with a constant that half the time does not reach: it is more, and less at twice the time.
        assert!(apart(meeting.at * 0.5) > 1.2 * apart(meeting.at) && apart(meeting.at * 2.0) < apart(meeting.at));
        let (inner, outer) = in_celsius(insertion.temperatures_at(meeting.at).unwrap());
        let common = meeting.temperature.get::<degree_celsius>();
        assert!(inner <= common && common <= outer, "{inner} {common} {outer}");
    }
}

#[test]
fn the_tightest_case_grips_first() {
    let seat = thin_boss(-18.0);
    let cases = Cases { tightest: 39.0, middle: 17.5, loosest: -4.0 }.map(|interference| sizes(52.0, interference));
    let found = seat.exchange(Gap::usual(Placement::OneSide)).run_cases(cases, seconds(7200.0)).unwrap();
    let (tightest, middle) = (grip(&found.tightest).unwrap(), grip(&found.middle).unwrap());
    assert!(tightest < 5.0 && middle > 60.0, "{tightest} {middle}");
    let StaysFree::LooseInTheShop { clearance } = stays_free(&found.loosest) else {
        panic!("{:?}", found.loosest.course)
    };
    assert!((clearance - um(4.0)).abs() < um(0.01), "{clearance:?}");
}

fn stays_free(insertion: &Insertion) -> StaysFree {
    match insertion.course {
        Course::StaysFree(why) => why,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_seat_that_needs_longer_says_so() {
    let seat = thin_boss(20.0);
    let insertion = seat.run(Placement::OneSide, 30.0);
    let StaysFree::NeedsLonger { clearance } = stays_free(&insertion) else { panic!("{:?}", insertion.course) };
    assert!(clearance > um(0.0) && clearance < um(5.0), "{clearance:?}");
    assert_eq!((insertion.grip(), insertion.end()), (None, seconds(30.0)));
}

/// Gripped or free, two parts of one temperature lose the same heat to the shop: a pair that has gripped is followed to the
/// temperatures of the same pair with so much clearance that it never grips, and in the end to that of the shop.
#[test]
fn a_gripped_pair_is_followed_on_to_the_temperature_of_the_shop() {
    let tight = thin_boss(-18.0);
    let loose = Seat { interference_um: -200.0, ..thin_boss(-18.0) };
    let ended = tight.run(Placement::OneSide, 7200.0);
    assert!(ended.end() < seconds(60.0), "{:?}", ended.end());
    let end = in_celsius(ended.temperatures_at(ended.end()).unwrap());
    let followed = ended.clone().followed_to(seconds(7200.0)).unwrap();
    assert_eq!((followed.end(), followed.grip()), (seconds(7200.0), ended.grip()));
    assert_eq!(end, in_celsius(followed.temperatures_at(ended.end()).unwrap()));
    let free = loose.run(Placement::OneSide, 7200.0);
    for time in [300.0, 900.0, 2700.0, 7200.0] {
        let (inner, outer) = in_celsius(followed.temperatures_at(seconds(time)).unwrap());
        let (_, beside) = in_celsius(free.temperatures_at(seconds(time)).unwrap());
        // The open gap keeps the parts apart for longer: the free pair is some tenths warmer.
        assert!(
            (inner - outer).abs() < 0.5 && (outer - beside).abs() < 0.03 * (beside - 20.0) + 0.1,
            "{inner} {outer} {beside}"
        );
    }
    let last = followed.clearance_at(seconds(7200.0)).unwrap();
    assert!(last < um(-29.0) && last > um(-30.0), "30 µm of interference are left in the shop: {last:?}");
    // What lasts longer than is asked stays as it is.
    assert_eq!(ended.clone().followed_to(seconds(1.0)).unwrap().end(), ended.end());
    assert_eq!(free.clone().followed_to(seconds(9000.0)).unwrap().end(), seconds(7200.0));
}

#[test]
fn a_warm_ring_on_a_cold_shaft_is_the_same_race_with_the_parts_exchanged() {
    // A steel ring at 100 °C on a steel shaft at 20 °C: the same material, so they never meet free.
    let inner = Part { to_joint: ConductionPath::cylinder(mm(25.0)), ..ring(STEEL, (0.0, 12.5), 15.0, 20.0) };
    let seat = Seat {
        inner,
        outer: boss(STEEL, (12.5, 16.0), 15.0, 100.0),
        diameter: 25.0,
        length: 15.0,
        interference_um: 12.0,
    };
    let insertion = seat.run(Placement::OneSide, 600.0);
    assert!(matches!(insertion.course, Course::GripsWhileEvening { .. }), "{:?}", insertion.course);
    let seconds = grip(&insertion).unwrap();
    assert!((0.2..10.0).contains(&seconds), "13 um of clearance and light parts: {seconds} s");
}

#[test]
fn a_stuck_ring_is_freed_by_warming_both_in_light_alloy_and_by_no_temperature_in_iron() {
    let mut seat = thin_boss(20.0);
    let asked = |seat: &Seat, interference: f64, clearance: f64| {
        seat.exchange(Gap::usual(Placement::OneSide)).frees_at(sizes(52.0, interference), um(clearance)).unwrap()
    };
    // 40 um / (52 mm x 10.7e-6) = 71.9 K; 52 um with 12 um of clearance.
    for (clearance, expected) in [(0.0, 91.9), (12.0, 113.5)] {
        let Freeing::BothAt(t) = asked(&seat, 40.0, clearance) else { panic!("{:?}", asked(&seat, 40.0, clearance)) };
        let t = t.get::<degree_celsius>();
        assert!((t - expected).abs() < 0.3, "{clearance} um: {t}");
    }
    assert_eq!(asked(&seat, -5.0, 0.0), Freeing::FreeInTheShop);
    assert!(matches!(asked(&seat, -5.0, 6.0), Freeing::BothAt(_)), "loose, but not by the clearance asked for");
    seat.outer = boss(IRON, (26.0, 35.0), 20.0, 20.0);
    assert_eq!(asked(&seat, 40.0, 0.0), Freeing::NoCommonTemperature);
    // Iron holds steel the tighter the warmer both are: a light interference is free again when both are cold.
    let Freeing::BothAt(t) = asked(&seat, 5.0, 0.0) else { panic!("cold frees it") };
    assert!(t < celsius(0.0), "{t:?}");
}

/// Seconds to the grip of a seat that loses nothing, by Simpson's rule: with the difference θ of the parts,
/// `dθ/dt = -A h θ (1/C₁ + 1/C₂)` and `1/h = (smallest gap + clearance / 2) / k + R`, R half of the resistances inside.
fn grip_by_quadrature(seat: &Seat, k: f64) -> f64 {
    let capacity = |part: &Part| part.mass * part.capacity.at(293.15).unwrap();
    let (inner, outer) = (capacity(&seat.inner), capacity(&seat.outer));
    let first = seat.outer.start - seat.inner.start;
    let mean = (inner * seat.inner.start + outer * seat.outer.start) / (inner + outer);
    let (bore, outside) = ((seat.diameter - seat.interference_um * 1e-3) * 1e-3, seat.diameter * 1e-3);
    let size = |at_20: f64, part: &Part, celsius: f64| at_20 * (1.0 + part.expansion.at(celsius + 273.15).unwrap());
    let clearance = |difference: f64| {
        let (cold, warm) = (mean - difference * outer / (inner + outer), mean + difference * inner / (inner + outer));
        size(bore, &seat.outer, warm) - size(outside, &seat.inner, cold)
    };
    let area = std::f64::consts::PI * seat.diameter * seat.length * 1e-6;
    let resistance =
        |part: &Part| part.to_joint.length.value / (part.to_joint.divisor * part.conductivity.at(293.15).unwrap());
    let inside = 0.5 * (resistance(&seat.inner) + resistance(&seat.outer));
    let per_kelvin = |difference: f64| {
        let way = (1e-6 + 0.5 * clearance(difference)) / k + inside;
        way / (area * difference * (1.0 / inner + 1.0 / outer))
    };
    // The clearance is linear in the difference.
    let last = first * clearance(0.0) / (clearance(0.0) - clearance(first));
    let width = (first - last) / 2000.0;
    let at = |i: u32| per_kelvin(last + width * f64::from(i));
    let between: f64 = (1..2000).map(|i| at(i) * if i % 2 == 1 { 4.0 } else { 2.0 }).sum();
    width / 3.0 * (at(0) + between + at(2000))
}

#[test]
fn the_time_of_the_grip_is_that_of_the_quadrature_wherever_it_lies_in_its_step() {
    let air = constant(0.025);
    let mut worst = 0.0_f64;
    for tenths in 0..60 {
        let mut seat = light_alloy(90.0, -18.0, 20.0, 0.0);
        for part in [&mut seat.inner, &mut seat.outer] {
            (part.film, part.emissivity, part.radiates) = (0.0, 0.0, false);
        }
        seat.inner.to_joint = ConductionPath::one_face(mm(5.0));
        seat.outer.to_joint = ConductionPath::one_face(mm(19.0));
        // It shrinks by 24.7 um: that leaves from 0.4 to 12.2 um when it is put in.
        seat.interference_um = 24.3 - 0.2 * f64::from(tenths);
        let gap = Gap { air: AirConductivity::Table(&air), ..Gap::usual(Placement::Concentric) };
        let found = grip(&seat.exchange(gap).run(seat.sizes(), seconds(600.0)).unwrap()).unwrap();
        worst = worst.max((found / grip_by_quadrature(&seat, 0.025) - 1.0).abs());
    }
    // 1e-6 of the difference of temperature in each step; a grip that was read off a step far beyond it was off by 5e-3.
    assert!(worst < 2e-4, "{worst:e}");
}
