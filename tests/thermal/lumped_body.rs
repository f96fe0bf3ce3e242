//! One body in one or more stages: exact solutions, textbooks, finite elements, limits.

use super::*;

#[test]
fn lumped_rows_agree_by_closed_form_and_by_solver() {
    prove("One body, closed form and solver");
}

#[test]
fn convection_with_radiation_agrees_with_an_independent_solver() {
    prove("One body with radiation");
}

/// Radiation alone has a closed form for the time: with `B = ε σ A / (m c)`, from T0 to T in surroundings of S it is
/// `F(T) - F(T0)`, `F(T) = (ln((T + S) / (T - S)) + 2 arctan(T / S)) / (4 B S³)` (partial fractions of `1 / (T⁴ - S⁴)`).
#[test]
fn between_its_steps_a_curved_history_is_right_to_a_millionth_of_the_change() {
    const SURROUNDINGS: f64 = 290.0;
    for (start, hours) in [(600.0, 10.0), (350.0, 20.0), (300.0, 20.0)] {
        let mut lump = Lump::new(0.3, 0.01, 470.0);
        lump.emissivity = 1.0;
        // A film that is next to nothing, for there must be one.
        let radiating = Stage { radiates: true, ..stage(SURROUNDINGS, 1e-12, elapsed(hours * 3600.0)) };
        let history = lump.run(start, &[radiating]).unwrap();
        let b = 5.670_374_419e-8 * 0.01 / (0.3 * 470.0);
        let f = |t: f64| {
            (((t + SURROUNDINGS) / (t - SURROUNDINGS)).ln() + 2.0 * (t / SURROUNDINGS).atan())
                / (4.0 * b * SURROUNDINGS.powi(3))
        };
        let mut worst = 0.0_f64;
        for i in 1..4000 {
            let exact = SURROUNDINGS + (start - SURROUNDINGS) * 0.998_f64.powi(i);
            let time = f(exact) - f(start);
            if time < hours * 3600.0 {
                let got = history.temperature_at(seconds(time)).unwrap().get::<kelvin>();
                worst = worst.max((got - exact).abs() / (start - SURROUNDINGS));
            }
        }
        assert!(worst < 1e-6, "{worst:e} of the change from {start} K");
    }
}

#[test]
fn dense_output_is_as_good_as_the_steps() {
    let mut lump = Lump::new(0.3, 0.01, 470.0);
    lump.capacity = barely_varying(470.0);
    let history = lump.run(293.15, &[stage(77.0, 150.0, elapsed(2000.0))]).unwrap();
    let mut worst = 0.0_f64;
    for i in 0..=4000 {
        let time = f64::from(i) / 2.0;
        let exact = 77.0 + 216.15 * (-time * 150.0 * 0.01 / (0.3 * 470.0)).exp();
        let got = history.temperature_at(seconds(time)).unwrap().get::<kelvin>();
        worst = worst.max((got - exact).abs() / 216.15);
    }
    assert!(worst < 1e-6, "{worst:e} of the change");
}

#[test]
fn textbook_examples_of_the_lumped_body() {
    assert_eq!(prove("Printed examples of cooling").len(), 5);
}

#[test]
fn the_correction_for_the_inside_keeps_the_time_right_up_to_biot_one() {
    let mut worst = [0.0_f64; 3];
    // A row of the set is one value, in the order of the file.
    for (row, check) in rows("lumped_error.csv").iter().zip(prove("Resistance inside a body, Biot number to 1")) {
        let (biot, left) = (number(row, "Bi"), number(row, "theta_mean_target"));
        let class = if left > 0.8 { 2 } else { usize::from(outer_only(row)) };
        worst[class] = worst[class].max((check.computed / check.expected - 1.0).abs());
        let lump = body_of_series(row);
        let expected = biot * lump.path.length.get::<meter>() / 0.01;
        assert!((run_of_series(row, &lump).stage(0).unwrap().biot - expected).abs() < 1e-12);
    }
    // The bounds are close to what happens, so a wrong divisor (5 for 4, 2 for 3) breaks them.
    assert!(worst[0] > 0.0095 && worst[1] > 0.018 && worst[2] > 0.1, "{worst:?}");
}

#[test]
fn ring_and_housing_follow_finite_elements_within_a_sixth_of_a_kelvin() {
    assert_eq!(prove("Rings and bosses in air and baths").len(), 2 * 56);
}

#[test]
fn heating_power_settles_where_the_loss_equals_it() {
    let mut lump = Lump::new(1.0, 0.05, 460.0);
    let heated = Stage {
        power: Power::new::<watt>(100.0),
        ..stage(293.15, 10.0, Until::Settled { within: TemperatureInterval::new::<kelvin_step>(0.1) })
    };
    // 100 W / (10 W/m²K × 0.05 m²) = 200 K.
    let history = lump.run(293.15, &[heated]).unwrap();
    assert!((history.end().1.get::<kelvin>() - 493.05).abs() < 1e-6);
    assert!((history.end().0.get::<second>() - 920.0 * 2000.0_f64.ln()).abs() < 1e-3);
    // With radiation the balance h ΔT + ε σ (T⁴ - T_s⁴) = 2000 W/m² holds at the end.
    lump.emissivity = 0.8;
    let history = lump.run(293.15, &[Stage { radiates: true, ..heated }]).unwrap();
    let t = history.stage(0).unwrap().approaches.get::<kelvin>();
    let loss = 10.0 * (t - 293.15) + 0.8 * 5.670374419e-8 * (t.powi(4) - 293.15_f64.powi(4));
    assert!((loss - 2000.0).abs() < 1e-6, "{t} {loss}");
}

#[test]
fn a_stage_states_the_time_constant_and_the_biot_number_at_the_middle_of_its_temperatures() {
    // c = 150 + 370 (T - 70)/330 J/(kg K), k = 20 + 0.1 (T - 100) W/(m K); 0.2 kg on 0.01 m² under 8 W/(m² K).
    let mut lump = Lump::new(0.2, 0.01, 1.0);
    lump.capacity = Curve::new(&[(70.0, 150.0), (400.0, 520.0)]).unwrap();
    lump.conductivity = Curve::new(&[(100.0, 20.0), (400.0, 50.0)]).unwrap();
    lump.path = ConductionPath::one_face(mm(12.0));
    for (start, surroundings) in [(293.15, 255.15), (200.0, 293.15), (373.15, 293.15)] {
        let history = lump.run(start, &[stage(surroundings, 8.0, elapsed(900.0))]).unwrap();
        let middle = 0.5 * (start + history.end().1.get::<kelvin>());
        // The conductivity does not follow the temperature: it is that midway to what the stage approaches.
        let (c, k) = (150.0 + 370.0 * (middle - 70.0) / 330.0, 20.0 + 0.1 * (0.5 * (start + surroundings) - 100.0));
        let record = history.stage(0).unwrap();
        let biot = 8.0 * lump.path.length.get::<meter>() / k;
        assert!((record.biot / biot - 1.0).abs() < 1e-9, "{} {biot}", record.biot);
        // The way inside adds a share of the Biot number: a third for a wall cooled at one face.
        let constant = 0.2 * c / (0.01 * 8.0) * (1.0 + biot / 3.0);
        let found = record.time_constant.get::<second>();
        assert!((found / constant - 1.0).abs() < 1e-9, "{found} {constant}");
    }
}

#[test]
fn stages_follow_one_another_and_are_read_back_at_any_time() {
    let lump = Lump::new(0.2, 0.01, 470.0);
    let freezer = stage(255.15, 8.0, elapsed(1800.0));
    let bench = stage(293.15, 6.0, Until::Settled { within: TemperatureInterval::new::<kelvin_step>(1.0) });
    let history = lump.run(293.15, &[freezer, bench]).unwrap();
    let (left_freezer, cold) = history.stage_end(0).unwrap();
    assert_eq!(left_freezer, seconds(1800.0));
    assert!((history.temperature_at(left_freezer).unwrap().get::<kelvin>() - cold.get::<kelvin>()).abs() < 1e-9);
    assert!((history.end().1.get::<kelvin>() - 292.15).abs() < 1e-6);
    assert_eq!(history.stage_end(2), None);
    // 280 K is passed going down and again going up; the first counts, and the search over time finds the same.
    let first = history.first_time_at(at_kelvin(280.0)).unwrap();
    assert!(first < left_freezer);
    let above = |t: Time| history.temperature_at(t).unwrap().get::<kelvin>() - 280.0;
    let searched = first_crossing(seconds(0.0), history.end().0, above).unwrap();
    assert!((searched - first).abs() < seconds(1e-6));
    let again = first_crossing(left_freezer, history.end().0, above).unwrap();
    assert!(again > left_freezer && above(again).abs() < 1e-6);
    assert_eq!(first_crossing(left_freezer, again * 0.99, above), None);
    // A sample that is zero itself is found too: samples lie at squares, the 64th of 128 at a quarter of the span.
    let line = |t: Time| t.get::<second>() - 0.25;
    assert_eq!(first_crossing(seconds(0.0), seconds(1.0), line), Some(seconds(0.25)));
    assert_eq!(first_crossing(seconds(0.25), seconds(1.0), line), Some(seconds(0.25)));
    assert!(history.temperature_at(history.end().0 * 1.01).is_err());
    assert!(history.temperature_at(seconds(-1.0)).is_err());
}

#[test]
fn nothing_to_do_is_done_without_trouble() {
    let mut lump = Lump::new(0.2, 0.01, 470.0);
    lump.capacity = barely_varying(470.0);
    let within = TemperatureInterval::new::<kelvin_step>(0.5);
    for until in [elapsed(0.0), elapsed(600.0), reaches(293.15), Until::Settled { within }] {
        let history = lump.run(293.15, &[stage(293.15, 8.0, until)]).unwrap();
        assert!((history.end().1.get::<kelvin>() - 293.15).abs() < 1e-9);
        assert!(history.end().0.get::<second>() <= 600.0);
    }
    let history = lump.run(293.15, &[]).unwrap();
    assert_eq!(history.end(), (seconds(0.0), at_kelvin(293.15)));
    assert!(history.temperature_at(seconds(0.0)).is_ok());
    let short = lump.run(293.15, &[stage(77.0, 8.0, elapsed(0.0))]).unwrap();
    assert!((short.end().1.get::<kelvin>() - 293.15).abs() < 1e-9);
}

#[test]
fn changes_near_the_last_digit_of_a_temperature_are_followed_too() {
    for radiates in [false, true] {
        let mut lump = Lump::new(0.2, 0.01, 470.0);
        (lump.capacity, lump.emissivity) = (barely_varying(470.0), 0.3);
        for power_of_ten in -14..=0 {
            let difference = 10.0_f64.powi(power_of_ten);
            for until in [elapsed(1e-9), elapsed(1e5), elapsed(1e12)] {
                let near = Stage { radiates, ..stage(293.15 + difference, 8.0, until) };
                let (_, end) = lump.run(293.15, &[near]).unwrap().end();
                let end = end.get::<kelvin>() - 293.15;
                assert!((-1e-12..=difference + 1e-12).contains(&end), "{difference} {until:?}: {end}");
            }
        }
    }
}

#[test]
fn what_cannot_be_is_refused_with_advice() {
    let lump = Lump::new(0.2, 0.01, 470.0);
    let said = |stage: Stage| lump.run(293.15, &[stage]).unwrap_err().to_string();
    let beyond = said(stage(255.15, 8.0, reaches(250.0)));
    assert!(beyond.contains("-23.1 °C is not reached") && beyond.contains("-18.0 °C at most"), "{beyond}");
    assert!(said(stage(255.15, 8.0, reaches(300.0))).contains("not reached"));
    // Half a thousandth of a kelvin from the end takes for ever, shop-wise.
    assert!(said(stage(255.15, 8.0, reaches(255.1505))).contains("not reached"));
    let soon = Until::Reaches { target: at_kelvin(260.0), longest: seconds(60.0) };
    let slow = lump.run(293.15, &[stage(255.15, 8.0, soon)]).unwrap_err();
    assert!(matches!(slow, ThermalError::TooSlow { reached_k, .. } if reached_k > 290.0), "{slow}");
    assert!(said(stage(255.15, 0.0, elapsed(1.0))).contains("film coefficient"));
    assert!(said(stage(255.15, 8.0, elapsed(f64::NAN))).contains("time"));
    assert!(said(stage(4.0, 800.0, elapsed(1e6))).contains("heat capacity"));
    for (mass, area, c) in [(0.0, 0.01, 470.0), (0.2, -1.0, 470.0), (0.2, 0.01, 0.0), (f64::NAN, 0.01, 470.0)] {
        assert!(Lump::new(mass, area, c).run(293.15, &[stage(255.15, 8.0, elapsed(1.0))]).is_err());
    }
    assert!(lump.run(30.0, &[stage(255.15, 8.0, elapsed(1.0))]).is_err());
    let tight = Until::Settled { within: TemperatureInterval::new::<kelvin_step>(0.0) };
    assert!(said(stage(255.15, 8.0, tight)).contains("distance"));
}
