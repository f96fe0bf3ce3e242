//! Boiling nitrogen.

use super::*;

fn pool(diameter: f64) -> NitrogenPool {
    NitrogenPool::new(mm(diameter))
}

#[test]
fn nitrogen_boils_where_the_equation_of_state_says() {
    prove("Boiling point of nitrogen");
    let high = nitrogen_boiling_point_at(metres(2000.0)).unwrap().get::<kelvin>();
    assert!((75.3..75.5).contains(&high), "{high}");
    assert!(nitrogen_boiling_point(pascals(111e3)).unwrap_err().to_string().contains("110 kPa"));
    assert!(nitrogen_boiling_point(pascals(49e3)).unwrap_err().to_string().contains("50"));
    assert!(nitrogen_boiling_point_at(metres(6000.0)).unwrap_err().to_string().contains("5000 m"));
}

#[test]
fn boiling_at_sea_level_agrees_within_a_twentieth_of_a_per_cent_in_the_film() {
    assert_eq!(prove("Boiling of nitrogen at sea level").len(), 37);
    assert_eq!(rows("nitrogen", "film boiling h convective part").len(), 19);
}

#[test]
fn below_boiling_the_liquid_carries_the_heat_off_by_convection() {
    // Nu = 0.15 Ra^(1/3) with the liquid at 77.36 K worked by hand: ρ² c β g/(μ k) = 806.085² × 2041.49 × 5.6705e-3 × 9.80665
    // / (1.60662e-4 × 0.144773) = 3.1714e12 1/(m³ K); h = 0.15 × 0.144773 × 14692 ΔT^(1/3), and 0.2 % for the rounding off at no superheat.
    let curve = pool(50.0).curve().unwrap();
    let got = w_m2k(curve.film(step(1.0)).unwrap());
    assert!((got / 319.0 - 1.0).abs() < 3e-3, "{got}");
}

#[test]
fn film_boiling_of_other_states_agrees_and_thin_air_lowers_the_critical_flux() {
    prove("Boiling of nitrogen at other states");
}

/// The limits of the formula itself: 0.59 (...)^(1/4) on the wave length for a thick cylinder.
#[test]
fn thick_parts_boil_as_breen_and_westwater_found() {
    let film = |d, t| w_m2k(breen_westwater_film_boiling(mm(d), step(t)).unwrap());
    let bromley = |d, t| w_m2k(bromley_film_boiling(mm(d), step(t), 0.8).unwrap());
    let wave = std::f64::consts::TAU * capillary_length().get::<meter>() * 1e3;
    for d in [5.0, 50.0, 500.0] {
        let wanted = (0.59 + 0.069 * wave / d) / 0.62 * (d / wave).powf(0.25);
        assert!((film(d, 100.0) / bromley(d, 100.0) / wanted - 1.0).abs() < 1e-12);
    }
    assert!((1.55..1.65).contains(&(film(50.0, 150.0) / bromley(50.0, 150.0))));
    let part = NitrogenPool { film: FilmBoiling::BreenWestwater, ..pool(50.0) };
    // The boiling point of the pool comes from the vapour-pressure equation, 0.0003 K away.
    assert!((w_m2k(part.curve().unwrap().film(step(150.0)).unwrap()) / film(50.0, 150.0) - 1.0).abs() < 1e-5);
}

#[test]
fn radiation_through_the_film_is_three_quarters_and_small() {
    let convection = bromley_film_boiling(mm(50.0), step(215.8), 0.8).unwrap();
    let both = film_boiling_with_radiation(convection, 1.0, step(215.8)).unwrap();
    let walls = at_kelvin(77.355);
    let black = radiation_coefficient(1.0, at_kelvin(77.355 + 215.8), walls).unwrap();
    assert!((w_m2k(both - convection) / w_m2k(black) - 0.75).abs() < 1e-9);
    let curve = NitrogenPool { emissivity: 0.2, ..pool(50.0) }.curve().unwrap();
    let share = w_m2k(curve.film(step(215.8)).unwrap()) / w_m2k(convection) - 1.0;
    assert!(share > 0.001 && share < 0.01, "{share}");
}

#[test]
fn inputs_out_of_range_name_the_nearest_bound() {
    let cases = [
        (NitrogenPool { minimum_superheat: step(19.0), ..pool(50.0) }, "from 20 "),
        (NitrogenPool { minimum_superheat: step(91.0), ..pool(50.0) }, "to 90 K"),
        (NitrogenPool { film_factor: 3.1, ..pool(50.0) }, "to 3"),
        (NitrogenPool { critical_constant: 0.1, ..pool(50.0) }, "from 0.118"),
        (NitrogenPool { surface_constant: 0.021, ..pool(50.0) }, "to 0.02"),
        (NitrogenPool { emissivity: -0.1, ..pool(50.0) }, "from 0 "),
        (NitrogenPool { pressure: pascals(120e3), ..pool(50.0) }, "to 110 kPa"),
        (pool(0.5), "from 1 "),
        (pool(1001.0), "to 1000 mm"),
    ];
    for (part, bound) in cases {
        let said = part.curve().unwrap_err().to_string();
        assert!(said.contains(bound), "{said}");
    }
    let curve = pool(50.0).curve().unwrap();
    assert!(curve.flux(step(446.0)).unwrap_err().to_string().contains("445 K"));
    assert!(curve.flux(step(-1.0)).is_err() && curve.film(step(f64::NAN)).is_err());
    assert!(bromley_film_boiling(mm(50.0), step(0.5), 0.8).is_err());
    assert!(rohsenow_nucleate_boiling(step(21.0), 0.013, 1.7).is_err());
    assert!(zuber_critical_flux(0.2).is_err());
}

proptest! {
    #[test]
    fn the_boiling_curve_has_no_jump_and_no_gap(
        diameter in 1.0..1000.0_f64,
        minimum in 20.0..90.0_f64,
        constant in 0.118..0.18_f64,
        surface in 0.003..0.02_f64,
        factor in 0.5..3.0_f64,
        thick in any::<bool>(),
    ) {
        let film = if thick { FilmBoiling::BreenWestwater } else { FilmBoiling::Bromley };
        let part = NitrogenPool {
            film, film_factor: factor, minimum_superheat: step(minimum), critical_constant: constant,
            surface_constant: surface, ..pool(diameter)
        };
        let curve = part.curve().unwrap();
        let flux = |excess: f64| w_m2(curve.flux(step(excess)).unwrap());
        let peak = curve.critical_superheat().get::<kelvin_step>();
        prop_assert!(peak < minimum);
        for place in [peak, minimum] {
            let jump = flux(place * (1.0 + 1e-7)) / flux(place * (1.0 - 1e-7)) - 1.0;
            prop_assert!(jump.abs() < 1e-5, "{place} K: {jump}");
        }
        let mut before = 0.0;
        for i in 1..=4450 {
            let (excess, now) = (f64::from(i) * 0.1, flux(f64::from(i) * 0.1));
            prop_assert!(now.is_finite() && now > 0.0);
            if excess <= peak || excess > minimum + 0.1 {
                prop_assert!(now > before, "rises at {excess} K");
            } else if excess > peak + 0.1 && excess <= minimum {
                prop_assert!(now < before, "falls at {excess} K");
            }
            before = now;
        }
    }
}
