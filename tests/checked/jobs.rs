//! Worked examples of books, each written as a whole job and planned, against the digits that the books print.
//!
//! The formulas alone are held against the same books in other sets; here limits, units, materials and temperatures come from a
//! job's text.

use super::reference_rows::{Row, number, read};
use super::screws::half_a_digit;
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::stock::Library;
use seatwise::{job, plan, report};
use serde_json::Value;

pub const SETS: &[Set] = &[Set {
    family: "Whole jobs",
    title: "Printed examples, planned",
    allowed: "half a unit of the last printed digit; where a printed diameter goes in, what its last digit makes of the result, \
              and half a unit of the sixth figure of the plan",
    checks: examples,
}];

const PSI_IN_MPA: f64 = 0.006_894_757;

/// The first seat of a job, planned, as JSON.
pub fn seat(text: &str) -> Value {
    let job = job::check(text, &Library::default()).unwrap_or_else(|error| panic!("{error}\n{text}"));
    let document = report::json::plan(&plan::plan(&job).unwrap()).unwrap();
    serde_json::from_str::<Value>(&document).unwrap()["seats"][0].clone()
}

pub fn figure(seat: &Value, pointer: &str) -> f64 {
    seat.pointer(pointer).unwrap_or_else(|| panic!("no {pointer}")).as_f64().unwrap()
}

/// A steel of the modulus and expansion that an example uses; what it leaves out does not enter the figure compared.
pub fn steel(modulus: &str, expansion: &str) -> String {
    format!(
        "{{ name = \"steel of the example\", family = \"steel\", density = \"7850 kg/m3\", modulus = \"{modulus}\", \
         poisson = \"0.292\", strength = \"600 MPa\", expansion = \"{expansion}\", heat_capacity = \"460 J/kgK\", \
         conductivity = \"45 W/mK\", coldest = \"-80 °C\", source = \"the example\" }}"
    )
}

/// Two rings of the same steel, or a solid shaft in a hub where there is no bore.
struct Rings<'t> {
    bore: Option<&'t str>,
    joint: &'t str,
    outside: &'t str,
    inner: &'t str,
    outer: &'t str,
    modulus: &'t str,
}

impl Rings<'_> {
    fn text(&self) -> String {
        let kind = match self.bore {
            Some(bore) => format!("kind = \"plain bush\"\nbore = \"{bore}\""),
            None => "kind = \"solid plug\"".to_owned(),
        };
        let steel = steel(self.modulus, "12 um/mK");
        format!(
            "[bearing]\n{kind}\noutside = \"{}\"\nwidth = \"{}\"\noutside_limits = \"{}\"\nmaterial = {steel}\n\
             [housing]\nbore_limits = \"{}\"\noutside = \"{}\"\nlength = \"{}\"\nmaterial = {steel}\n",
            self.joint, self.joint, self.inner, self.outer, self.outside, self.joint
        )
    }
}

/// The trunnion in its hub: 0.015 in of interference, and nothing to spare wanted.
pub fn trunnion(material: &str, chill: &str) -> Value {
    seat(&format!(
        "[bearing]\nkind = \"solid plug\"\noutside = \"12.363 in\"\nwidth = \"12 in\"\n\
         outside_limits = \"0/0 thou\"\nmaterial = {material}\n[housing]\nbore_limits = \"-15.0/-15.0 thou\"\n\
         outside = \"20 in\"\nmaterial = {material}\n{chill}[bench]\ntemperature = \"80 °F\"\ncarry = \"0 s\"\n\
         placing_clearance = \"0 thou\"\n"
    ))
}

/// Chill of the trunnion: from 80 °F in dry ice and alcohol at -108 °F.
pub const TRUNNION_CHILL: &str =
    "[chill]\npart = \"plug\"\nmedium = \"dry-ice-alcohol\"\ntemperature = \"-108 °F\"\nhold = \"72 h\"\n";

/// Contraction of the trunnion of a material, in.
pub fn contraction(material: &str) -> f64 {
    let at_bore = |seat: &Value| figure(seat, "/at_bore/clearance_um/middle") / 25_400.0;
    at_bore(&trunnion(material, TRUNNION_CHILL)) - at_bore(&trunnion(material, ""))
}

/// A solid shaft of 40 mm in a hub of 80 mm, 207 GPa, H7 with this class. Reading the problem's radial interference as diametral
/// would halve the pressure, and limits paired upper with upper, or lower with lower, give 66 and 83 MPa in the first.
fn shaft_in_hub(class: &str) -> Value {
    let rings = Rings { bore: None, joint: "40 mm", outside: "80 mm", inner: class, outer: "H7", modulus: "207 GPa" };
    seat(&rings.text())
}

/// The same in inches, with this interference.
fn shaft_in_inches(limits: &str) -> f64 {
    let rings =
        Rings { bore: None, joint: "1-1/2 in", outside: "3 in", inner: limits, outer: "0/0 thou", modulus: "30e6 psi" };
    figure(&seat(&rings.text()), "/press/pressure_mpa/tightest") / PSI_IN_MPA
}

/// A jacket whose inner diameter is the printed one, on a tube of 207 GPa.
fn jacket(row: &Row, [bore, joint, outside]: [&str; 3]) -> (Value, f64) {
    let nominal: f64 = joint.trim_end_matches(" mm").parse().unwrap();
    let below = number(row, "printed") - nominal;
    let limits = format!("{0:.3}/{0:.3} um", 1000.0 * below);
    let rings = Rings { bore: Some(bore), joint, outside, inner: "0/0 um", outer: &limits, modulus: "207 GPa" };
    (seat(&rings.text()), half_a_digit(&row["printed"]) / -below)
}

fn examples() -> Vec<Check> {
    let mut sheet = Sheet::of("examples/jobs.csv");
    let rows = read("examples/jobs.csv");
    let row = |id: &str| rows.iter().find(|row| row["id"] == id).unwrap_or_else(|| panic!("no row {id}"));
    let mut add = |id: &str, unit: &'static str, [expected, computed]: [f64; 2], allowed: f64| {
        let row = row(id);
        sheet.row(format!("{id}, {}", row["example"]));
        sheet.source(&row["source"], &row["status"]);
        sheet.within((&row["quantity"], unit), [expected, computed], allowed);
    };
    // A ten-thousandth of the half unit for the noise of the comparison itself.
    let printed = |id: &str| (number(row(id), "printed"), half_a_digit(&row(id)["printed"]) * 1.0001);
    for (class, tightest, loosest) in [("s6", "PE01", "PE02"), ("u6", "PE03", "PE04")] {
        let seat = shaft_in_hub(class);
        for (id, case) in [(tightest, "tightest"), (loosest, "loosest")] {
            let (expected, allowed) = printed(id);
            add(id, "MPa", [expected, figure(&seat, &format!("/press/pressure_mpa/{case}"))], allowed);
        }
    }
    for (id, limits) in [("PE05", "+2.3/+2.3 thou"), ("PE06", "+3.0/+3.0 thou")] {
        let (expected, allowed) = printed(id);
        add(id, "psi", [expected, shaft_in_inches(limits)], allowed);
    }
    // 31.711 µm on diameter bring the bore of the jacket to the given 100 N/mm².
    let (seat, share) = jacket(row("PE07"), ["20 mm", "40 mm", "60 mm"]);
    add("PE07", "MPa", [100.0, figure(&seat, "/press/hoop_outer_mpa/tightest")], 100.0 * share + 0.5e-3);
    // The printed diameter has four digits of interference, which is what bounds the pressure.
    let (seat, share) = jacket(row("PE08"), ["50 mm", "75 mm", "100 mm"]);
    let pressure = number(row("PE09"), "printed");
    add("PE09", "MPa", [pressure, figure(&seat, "/press/pressure_mpa/tightest")], pressure * share + 0.5e-5);
    let (expected, allowed) = printed("PE10");
    add("PE10", "in", [expected, contraction(&steel("30e6 psi", "6.47 uin/in°F"))], allowed);
    sheet.done()
}
