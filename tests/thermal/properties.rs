//! What must hold for any body in any surroundings.

use super::*;

fn real_capacity() -> Curve {
    // The shape of a metal: falling steeply below 150 K.
    Curve::new(&[(70.0, 160.0), (120.0, 300.0), (200.0, 400.0), (293.15, 460.0), (500.0, 530.0), (900.0, 700.0)])
        .unwrap()
}

fn radiating(surroundings: f64, film: f64, until: Until) -> Stage<'static> {
    Stage { radiates: true, ..stage(surroundings, film, until) }
}

fn lump(mass: f64) -> Lump {
    let path = ConductionPath::both_faces(mm(10.0));
    Lump { emissivity: 0.4, capacity: real_capacity(), path, ..Lump::new(mass, 0.02, 1.0) }
}

proptest! {
    #[test]
    fn temperature_stays_between_start_and_surroundings(
        start in 75.0..600.0_f64, surroundings in 75.0..600.0_f64, film in 1.0..2000.0, time in 1.0..1e6,
    ) {
        let history = lump(0.5).run(start, &[radiating(surroundings, film, elapsed(time))]).unwrap();
        let (low, high) = (start.min(surroundings), start.max(surroundings));
        let mut before = start;
        for i in 0..=100 {
            let t = history.temperature_at(seconds(time * f64::from(i) / 100.0)).unwrap().get::<kelvin>();
            prop_assert!(t >= low - 1e-9 && t <= high + 1e-9);
            // Always towards the surroundings, but for the last digits of the solver.
            prop_assert!((t - before) * (surroundings - start).signum() > -1e-6 * (high - low));
            before = t;
        }
    }

    #[test]
    fn more_film_is_never_slower_and_more_mass_never_faster(
        surroundings in 75.0..280.0_f64, film in 2.0..500.0, more in 1.01..20.0_f64, share in 0.05..0.95,
    ) {
        let target = surroundings + (293.15 - surroundings) * share;
        let time = |mass: f64, film: f64| {
            lump(mass).run(293.15, &[radiating(surroundings, film, reaches(target))]).unwrap().end().0
        };
        prop_assert!(time(0.5, film * more) < time(0.5, film));
        // Time is in proportion to the mass.
        let grown: f64 = (time(0.5 * more, film) / time(0.5, film)).value;
        prop_assert!((grown / more - 1.0).abs() < 1e-6, "{} {}", grown, more);
    }

    #[test]
    fn reaching_a_temperature_and_waiting_for_it_agree(
        start in 75.0..600.0_f64, surroundings in 75.0..600.0_f64, film in 1.0..2000.0, share in 0.02..0.98,
    ) {
        prop_assume!((start - surroundings).abs() > 1.0);
        let target = surroundings + (start - surroundings) * share;
        let first = lump(0.5).run(start, &[radiating(surroundings, film, reaches(target))]).unwrap();
        prop_assert!((first.end().1.get::<kelvin>() - target).abs() < 1e-6 * (start - surroundings).abs());
        let biot_of_target = first.stage(0).unwrap().biot;
        prop_assert!(biot_of_target.is_finite() && biot_of_target > 0.0);
    }
}
