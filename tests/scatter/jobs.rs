//! Jobs of the tests.

use seatwise::job::{self, Job};
use seatwise::stock::Library;

/// A checked job.
pub fn job(text: &str) -> Job {
    job::check(text, &Library::default()).map_err(|problems| problems.to_string()).unwrap()
}

/// Scenario S31: a ring of 52 mm, 0/-13 µm, in N7; `scatter` is its table.
pub use crate::checked::scatter::ring_in_n7 as s31;

/// A liquid nitrogen job whose boiling curve is passed while the bush is in it.
pub const NITROGEN: &str = r#"
title = "Bush in nitrogen, taken out early"
[bearing]
kind = "plain bush"
bore = "40 mm"
outside = "50 mm"
width = "40 mm"
outside_limits = "s6"
material = "bronze"
[housing]
bore_limits = "H7"
outside = "85 mm"
material = "carbon-steel"
[chill]
part = "bush"
medium = "liquid-nitrogen"
hold = "5 min"
[bench]
carry = "12 s"
"#;

/// A bearing of three bodies in a bath, moist air after it.
pub const BATH: &str = r#"
title = "Bearing in a cold bath"
[bearing]
designation = "6208"
[housing]
bore_limits = "M7"
outside = "120 mm"
material = "grey-iron"
[chill]
part = "bearing"
medium = "dry-ice-alcohol"
hold = "6 min"
[bench]
carry = "20 s"
humidity = "60 %"
"#;

/// An inner ring in an oil bath, whose outer ring is ahead of it.
pub const OIL: &str = r#"
title = "Bearing from an oil bath"
[bearing]
designation = "6208"
[shaft]
outside_limits = "k5"
material = "carbon-steel"
[warm]
part = "bearing"
medium = "oil-bath"
temperature = "90 °C"
hold = "20 min"
[bench]
carry = "15 s"
"#;

/// An inner ring on an induction heater until it has a temperature.
pub const HEATER: &str = r#"
title = "Bearing on a heater"
[bearing]
designation = "6210"
[shaft]
outside_limits = "m6"
material = "carbon-steel"
[warm]
part = "bearing"
medium = "induction-heater"
power = "1 kW"
until = "100 °C"
[bench]
carry = "15 s"
"#;
