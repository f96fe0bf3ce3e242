//! Tables of a film coefficient over the surface temperature.

use super::*;

/// Largest error of the table at places between its rows, as a share.
fn worst(law: &FilmLaw, (from, to): (f64, f64), direct: impl Fn(f64) -> f64) -> (f64, f64) {
    let mut worst = (0.0_f64, 0.0);
    for i in 0..=4000 {
        // Denser towards both ends.
        let share = 0.5 - 0.5 * (std::f64::consts::PI * f64::from(i) / 4000.0).cos();
        let t = from + share * (to - from);
        let off = (w_m2k(law.at(at_kelvin(t)).unwrap()) / direct(t) - 1.0).abs();
        if off > worst.0 {
            worst = (off, t);
        }
    }
    worst
}

#[test]
fn the_table_in_air_is_within_half_a_per_cent_of_the_direct_call() {
    let blind = boss(Some(BackWall { thickness: mm(5.0), hole: None }));
    for part in [ring(), plug(40.0, 60.0), plug(400.0, 30.0), blind] {
        for axis in [Axis::Horizontal, Axis::Vertical] {
            for (start, air) in [(20.0, -25.0), (77.355 - 273.15, 20.0), (150.0, 20.0), (20.0, 120.0), (20.2, 20.0)] {
                for air_speed in [None, speed(0.3), speed(5.0)] {
                    let around = AirAround { air_speed, ..still(air, axis) };
                    let law = FilmLaw::in_air(&part, &around, celsius(start)).unwrap();
                    let ends = (air + 273.15, start + 273.15);
                    let (off, t) = worst(&law, ends, |t| {
                        // At no difference the direct call counts the part as the warmer one.
                        let nudge = if start < air { -1e-6 } else { 1e-6 };
                        mean(&part, &around, t + nudge)
                    });
                    assert!(off < 0.005, "{part:?} {around:?}: {off} at {t} K");
                }
            }
        }
    }
}

#[test]
fn the_table_in_nitrogen_is_within_half_a_per_cent_of_the_direct_call() {
    for diameter in [5.0, 62.0, 300.0] {
        for (minimum, surface, start) in
            [(40.0, 0.013, 293.15), (25.0, 0.015, 373.0), (85.0, 0.006, 293.15), (60.0, 0.013, 100.0)]
        {
            let part = NitrogenPool {
                minimum_superheat: step(minimum),
                surface_constant: surface,
                ..NitrogenPool::new(mm(diameter))
            };
            let curve = part.curve().unwrap();
            let boiling = curve.boiling_point().get::<kelvin>();
            let law = FilmLaw::in_nitrogen(&part, at_kelvin(start)).unwrap();
            let direct = |t: f64| w_m2k(curve.film(step((t - boiling).max(0.0))).unwrap());
            let (off, t) = worst(&law, (boiling, start), direct);
            assert!(off < 0.005, "{part:?} from {start}: {off} at {t} K");
            let FilmLaw::OfTemperature(table) = &law else { panic!("a table") };
            assert!((10..=60).contains(&table.points().count()));
        }
    }
}

#[test]
fn a_table_ends_where_it_was_asked_to_and_says_so() {
    let law = FilmLaw::in_air(&ring(), &still(-25.0, Axis::Horizontal), celsius(20.0)).unwrap();
    assert!(law.at(celsius(20.0)).is_ok() && law.at(celsius(-25.0)).is_ok());
    // A solver's last digits may stray a hundredth beyond the air, no farther.
    assert!(law.at(celsius(-25.005)).is_ok() && law.at(celsius(-25.02)).is_err());
    let said = law.at(celsius(21.0)).unwrap_err().to_string();
    assert!(said.contains("film coefficient") && said.contains("293.150 K"), "{said}");
    let (least, most) = law.extremes();
    assert!(least < most && law.at(celsius(20.0)).unwrap() <= most && law.at(celsius(-25.0)).unwrap() >= least);
}

#[test]
fn without_a_difference_and_for_stated_values_the_law_is_a_constant() {
    let at_rest = FilmLaw::in_air(&ring(), &still(20.0, Axis::Horizontal), celsius(20.0)).unwrap();
    assert!(matches!(at_rest, FilmLaw::Constant(film) if w_m2k(film) > 0.5));
    let boiled = FilmLaw::in_nitrogen(&NitrogenPool::new(mm(62.0)), at_kelvin(77.0)).unwrap();
    assert!(matches!(boiled, FilmLaw::Constant(film) if w_m2k(film) > 50.0));
    let law = FilmLaw::constant(OIL_BATH.low()).unwrap();
    assert!(law.at(celsius(500.0)).unwrap() == OIL_BATH.low() && law.extremes() == (OIL_BATH.low(), OIL_BATH.low()));
    assert!(FilmLaw::constant(OIL_BATH.low() * 0.0).is_err());
}

#[test]
fn starts_that_no_law_covers_are_refused() {
    let pool = NitrogenPool::new(mm(62.0));
    assert!(FilmLaw::in_nitrogen(&pool, at_kelvin(70.0)).is_err());
    assert!(FilmLaw::in_nitrogen(&pool, at_kelvin(530.0)).unwrap_err().to_string().contains("445 K"));
    let said = FilmLaw::in_air(&ring(), &still(20.0, Axis::Vertical), celsius(700.0)).unwrap_err().to_string();
    assert!(said.contains("300 °C"), "{said}");
    assert!(FilmLaw::between(at_kelvin(-1.0), at_kelvin(300.0), |_| Ok(1.0)).is_err());
}

/// A ball of 20 mm, through the public correlation: any coefficient can be tabulated.
#[test]
fn any_correlation_can_be_made_a_law() {
    let room = celsius(20.0);
    let ball = |surface: f64| {
        let mean = 0.5 * (surface + 293.15);
        let air = Air::at(at_kelvin(mean), pascals(101_325.0))?;
        let (viscosity, diffusivity) = (air.kinematic_viscosity().value, air.thermal_diffusivity().value);
        let rayleigh = 9.806_65 / mean * (surface - 293.15).abs() * 8e-6 / (viscosity * diffusivity);
        let nusselt = NaturalConvection::Sphere.nusselt(rayleigh, air.prandtl().value)?;
        Ok(nusselt * air.conductivity().value / 0.02)
    };
    let law = FilmLaw::between(celsius(100.0), room, ball).unwrap();
    let (off, t) = worst(&law, (293.25, 373.15), |t| ball(t).unwrap());
    assert!(off < 0.005, "{off} at {t} K");
}
