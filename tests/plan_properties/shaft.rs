//! The same for a bearing on its shaft, where the bearing is the outer part.

use super::*;

/// A bearing of so many millimetres of bore, and how it and its shaft are treated.
#[derive(Clone, Copy, Debug)]
struct OnShaft {
    bore_mm: u32,
    class: &'static str,
    hollow: bool,
    /// Oven in steps of 5 °C, minutes in it.
    oven: (u32, u32),
    /// Minutes that the shaft is in the freezer.
    freezer: u32,
    carry_s: u32,
}

impl OnShaft {
    fn text(&self, warm: bool, chill: bool) -> String {
        let Self { bore_mm, class, carry_s, freezer, oven: (steps, minutes), .. } = *self;
        let hollow = if self.hollow { format!("inside = \"{} mm\"\n", bore_mm / 2) } else { String::new() };
        let mut text = format!(
            "[bearing]\nkind = \"ball bearing\"\nbore = \"{bore_mm} mm\"\noutside = \"{} mm\"\nwidth = \"{} mm\"\n\
             closure = \"open\"\n[shaft]\noutside_limits = \"{class}\"\nmaterial = \"carbon-steel\"\n{hollow}\
             length = \"{} mm\"\n[bench]\ncarry = \"{carry_s} s\"\n",
            2 * bore_mm,
            bore_mm / 3,
            3 * bore_mm
        );
        if warm {
            text += "[warm]\npart = \"bearing\"\nmedium = \"oven\"\n";
            text += &format!("temperature = \"{} °C\"\nhold = \"{minutes} min\"\n", 5 * steps);
        }
        if chill {
            text += &format!("[chill]\npart = \"shaft\"\nmedium = \"freezer\"\nhold = \"{freezer} min\"\n");
        }
        text
    }

    fn clearance(&self, warm: bool, chill: bool) -> [f64; 3] {
        clearance(&planned(&self.text(warm, chill))["seats"][0])
    }
}

fn on_shaft() -> impl Strategy<Value = OnShaft> {
    let class = proptest::sample::select(vec!["h6", "j6", "k6", "m6", "n6"]);
    let treated = ((8..=24_u32, 1..=120_u32), 1..=240_u32);
    (20..=120_u32, class, any::<bool>(), treated, 0..=60_u32).prop_map(
        |(bore_mm, class, hollow, (oven, freezer), carry_s)| OnShaft { bore_mm, class, hollow, oven, freezer, carry_s },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(14))]

    #[test]
    fn a_warmer_bearing_and_a_colder_shaft_never_leave_less_clearance(
        job in on_shaft(), hotter in 0..=2_u32, longer in 0..=60_u32,
    ) {
        let (steps, minutes) = job.oven;
        let warmer = OnShaft { oven: (steps + hotter, minutes + longer), ..job };
        let colder = OnShaft { freezer: job.freezer + longer, ..job };
        let steps = [
            (job.clearance(false, false), job.clearance(true, false)),
            (job.clearance(false, false), job.clearance(false, true)),
            (job.clearance(true, false), warmer.clearance(true, false)),
            (job.clearance(false, true), colder.clearance(false, true)),
        ];
        for (before, after) in steps {
            for (before, after) in before.into_iter().zip(after) {
                prop_assert!(after >= before - UM, "{before} then {after}");
            }
        }
    }

    #[test]
    fn a_shaft_untreated_at_20_degrees_meets_the_fit(job in on_shaft()) {
        let seat = &planned(&job.text(false, false))["seats"][0];
        prop_assert_eq!(seat["seat"].as_str(), Some("shaft"));
        for (interference, clearance) in range(&seat["fit"]["interference_um"]).into_iter().zip(clearance(seat)) {
            prop_assert!((interference + clearance).abs() < UM);
        }
        // The ring is the outer part here: its limits lie below its nominal bore, ISO 492.
        prop_assert!(number(&seat["fit"]["outer_limits_um"]["lower"]) < 0.0);
    }

    #[test]
    fn a_second_seat_changes_nothing_of_the_first(job in jobs::job(), class in proptest::sample::select(vec!["h6", "k6", "m6"])) {
        prop_assume!(job.kind == Kind::Bearing);
        let text = job.text(Written::Metric);
        let both = text.clone() + "[shaft]\nmaterial = \"carbon-steel\"\noutside_limits = \"" + class + "\"\n";
        let (alone, both) = (planned(&text), planned(&both));
        prop_assert_eq!(both["seats"].as_array().unwrap().len(), 2);
        for key in ["fit", "chill", "warm", "at_bore", "window_s", "time_to_clear_s", "lock_c", "press", "service", "clears_at"] {
            prop_assert_eq!(&alone["seats"][0][key], &both["seats"][0][key], "{}", key);
        }
    }
}
