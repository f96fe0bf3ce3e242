//! Answers of an exercise from what its sheet gives, by short formulas that are written here and use nothing of the crate.
//!
//! Rings: constants of Lamé's solution from the pressures at both faces (Timoshenko, Strength of Materials II, from
//! memory). Cooling: Newton's law with the resistance inside added to that of the film; in air by Simpson's rule over the
//! temperature, with the Stefan-Boltzmann constant of CODATA 2018.

use serde_json::Value;
use std::collections::HashMap;
use std::f64::consts::PI;

/// What a case gives, by its place; a later case has the rest from the first.
struct Given(HashMap<String, f64>);

/// How far an answer may be off: a share of it, and an amount in its unit.
type Allowed = (f64, f64);
/// Closed forms in double precision; a length is a difference of two that are 1e12 times as large.
const EXACT: Allowed = (1e-9, 1e-13);
/// K: the bath is followed in steps.
const STEPPED: Allowed = (0.0, 2e-5);
/// m: a size at such a temperature.
const COLD: Allowed = (0.0, 3e-11);
/// s: a time is found to a hundredth of a second.
const HALVED: Allowed = (0.0, 0.0051);

/// Works every answer that was asked for; how many, or the first that differs.
pub fn problems(sheet: &Value, answers: &Value) -> Result<usize, String> {
    let mut looked_at = 0;
    for (given, solved) in list(&sheet["problems"]).iter().zip(list(&answers["problems"])) {
        for answer in list(&solved["questions"]).iter().flat_map(|question| list(&question["answers"])) {
            if answer["asked"] == true {
                check(&Given::of(list(&given["cases"]), answer["case"].as_u64().unwrap() as usize), answer)
                    .map_err(|wrong| format!("problem {}: {wrong}", given["number"]))?;
                looked_at += 1;
            }
        }
    }
    Ok(looked_at)
}

fn list(value: &Value) -> &[Value] {
    value.as_array().unwrap()
}

fn check(given: &Given, answer: &Value) -> Result<(), String> {
    if let Some(said) = answer["word"]["word"].as_str() {
        let worked = if answer["word"]["of"] == "kind" { given.kind() } else { given.verdict() };
        return if worked == said { Ok(()) } else { Err(format!("{worked}, not {said}")) };
    }
    let at = answer["number"]["at"].as_str().unwrap().trim_start_matches("/seats/0/");
    let ((share, amount), worked) = given.worked(at);
    let said = answer["number"]["value"].as_f64().unwrap();
    let near = (worked - said).abs() <= share * said.abs() + amount;
    if near { Ok(()) } else { Err(format!("{at}: {worked}, not {said}")) }
}

impl Given {
    fn of(cases: &[Value], case: usize) -> Self {
        let values = [&cases[0], &cases[case]].into_iter().flat_map(|case| list(&case["given"])).map(|value| {
            let at = value["at"].as_str().unwrap().trim_start_matches("/seats/0/");
            (at.to_owned(), value["value"].as_f64().unwrap())
        });
        Self(values.collect())
    }

    fn get(&self, at: &str) -> f64 {
        *self.0.get(at).unwrap_or_else(|| panic!("the sheet does not give {at}"))
    }

    fn or(&self, at: &str, otherwise: f64) -> f64 {
        self.0.get(at).copied().unwrap_or(otherwise)
    }

    fn worked(&self, at: &str) -> (Allowed, f64) {
        let (largest, smallest) = ("largest", "smallest");
        let bears = || self.stretched(largest, smallest, "strain_at_shop_um_m", ["basis/shop_c"; 2]);
        let in_service = |state: &str, inner, outer| {
            let at = format!("strain_in_service_um_m/{state}");
            let [inner_c, outer_c] = ["inner", "outer"].map(|part| format!("service/{state}/{part}_c"));
            self.stretched(inner, outer, &at, [&inner_c, &outer_c])
        };
        let holds = || {
            let pressure = self.pressure(in_service("0", smallest, largest));
            self.or("press/shape/force_low", 1.0) * self.get("press/friction_low") * pressure * self.rubbed()
        };
        let high = |factor: &str| self.or(&format!("press/shape/{factor}_high"), 1.0);
        let pressed = || high("pressure") * self.pressure(bears());
        match at {
            "basis/inner/smallest_mm" => (EXACT, self.size("inner", smallest)),
            "basis/inner/largest_mm" => (EXACT, self.size("inner", largest)),
            "basis/outer/smallest_mm" => (EXACT, self.size("outer", smallest)),
            "basis/outer/largest_mm" => (EXACT, self.size("outer", largest)),
            "fit/interference_um/tightest" => (EXACT, self.interference(largest, smallest)),
            "fit/interference_um/loosest" => (EXACT, self.interference(smallest, largest)),
            "clears_at/inner_c" => (STEPPED, self.clears("inner")),
            "clears_at/outer_c" => (STEPPED, self.clears("outer")),
            "chill/time_constant_s" => (EXACT, self.time_constant()),
            "chill/end_c" => (STEPPED, self.leaving()),
            "at_bore/clearance_um/tightest" if self.0.contains_key("chill/hold_s") => {
                (COLD, self.arrival(largest, smallest))
            }
            "at_bore/clearance_um/tightest" => (EXACT, self.arrival(largest, smallest)),
            "time_to_clear_s/tightest" => (HALVED, self.shortest()),
            "window_s/tightest" => (HALVED, self.in_air()),
            "press/pressure_mpa/tightest" => (EXACT, pressed()),
            "press/force_n/tightest" => {
                // Where the sheet gives no factor of the force, it has that of the pressure.
                let factor = self.or("press/shape/force_high", high("pressure"));
                (EXACT, self.get("press/friction_high") * factor * self.pressure(bears()) * self.rubbed())
            }
            "press/hoop_outer_mpa/tightest" => (EXACT, self.hoop(pressed())),
            "press/yield_factor/tightest" => (EXACT, self.get("press/elastic_limit_um") / bears()),
            "service/0/interference_um/tightest" => (EXACT, in_service("0", largest, smallest)),
            "service/0/interference_um/loosest" => (EXACT, in_service("0", smallest, largest)),
            "service/1/interference_um/tightest" => (EXACT, in_service("1", largest, smallest)),
            "service/1/interference_um/loosest" => (EXACT, in_service("1", smallest, largest)),
            "service/0/holds_n/loosest" => (EXACT, holds()),
            "service/0/holds_nm/loosest" => (EXACT, holds() * self.get("nominal_mm") / 2.0),
            other => panic!("no formula for {other}"),
        }
    }

    /// A diameter: given, or the nominal one with a deviation of its class.
    fn size(&self, part: &str, end: &str) -> f64 {
        let deviation = if end == "largest" { "upper" } else { "lower" };
        let by_class = || self.get("nominal_mm") + self.get(&format!("fit/{part}_limits_um/{deviation}"));
        self.0.get(&format!("basis/{part}/{end}_mm")).copied().unwrap_or_else(by_class)
    }

    fn interference(&self, inner: &str, outer: &str) -> f64 {
        self.size("inner", inner) - self.size("outer", outer)
    }

    fn coefficient(&self, part: &str) -> f64 {
        self.get(if part == "inner" { "job:bearing.material.expansion" } else { "job:housing.material.expansion" })
    }

    /// Change of length: given, or by the coefficient from 20 °C.
    fn strain(&self, part: &str, at: &str, temperature: impl Fn() -> f64) -> f64 {
        let given = self.0.get(&format!("basis/{part}/{at}")).copied();
        given.unwrap_or_else(|| self.coefficient(part) * (temperature() - self.get("job:reference")))
    }

    /// Interference of two sizes at temperatures whose places are named.
    fn stretched(&self, inner: &str, outer: &str, at: &str, temperatures: [&str; 2]) -> f64 {
        let size = |part, end, temperature: &str| {
            self.size(part, end) * (1.0 + self.strain(part, at, || self.get(temperature)))
        };
        size("inner", inner, temperatures[0]) - size("outer", outer, temperatures[1])
    }

    fn arrival(&self, inner: &str, outer: &str) -> f64 {
        let at = "strain_at_bore_um_m";
        let part = self.size("inner", inner) * (1.0 + self.strain("inner", at, || self.leaving()));
        self.size("outer", outer) * (1.0 + self.strain("outer", at, || self.get("basis/shop_c"))) - part
    }

    fn clears(&self, part: &str) -> f64 {
        let wanted = self.interference("largest", "smallest") + self.get("at_bore/placing_clearance_um");
        let (end, sign) = if part == "inner" { ("largest", -1.0) } else { ("smallest", 1.0) };
        self.get("basis/shop_c") + sign * wanted / self.size(part, end) / self.coefficient(part)
    }

    /// Resistance inside the part over that of the film times the film: `Bi / n` over `h`.
    fn inside(&self) -> f64 {
        self.get("chill/biot") / self.get("job:way_out") / self.get("chill/film_w_m2k")
    }

    fn stored(&self) -> f64 {
        self.get("chill/mass_kg") * self.get("job:bearing.material.heat_capacity")
    }

    fn time_constant(&self) -> f64 {
        self.stored() * (1.0 / self.get("chill/film_w_m2k") + self.inside()) / self.get("chill/area_m2")
    }

    fn leaving(&self) -> f64 {
        let (shop, bath) = (self.get("basis/shop_c"), self.get("chill/medium_c"));
        shop + (bath - shop) * -(-self.get("chill/hold_s") / self.time_constant()).exp_m1()
    }

    fn shortest(&self) -> f64 {
        let (shop, bath) = (self.get("basis/shop_c"), self.get("chill/medium_c"));
        -self.time_constant() * (-(shop - self.clears("inner")) / (shop - bath)).ln_1p()
    }

    /// Time from leaving until it clears no more: `∫ m c (1/H + inside) / (A (T_s - T)) dT`.
    fn in_air(&self) -> f64 {
        const SIGMA: f64 = 5.670_374_419e-8;
        const STEPS: u32 = 200;
        let (shop, from, to) = (self.get("basis/shop_c"), self.leaving(), self.clears("inner"));
        let slowness = |t: f64| {
            let radiated =
                self.get("job:bearing.material.emissivity") * SIGMA * (shop.powi(4) - t.powi(4)) / (shop - t);
            let film = self.get("job:bench.film") + radiated;
            self.stored() * (1.0 / film + self.inside()) / (self.get("chill/area_m2") * (shop - t))
        };
        let step = (to - from) / f64::from(STEPS);
        let weight = |i: u32| if i == 0 || i == STEPS { 1.0 } else { f64::from(2 + 2 * (i % 2)) };
        let sum: f64 = (0..=STEPS).map(|i| weight(i) * slowness(from + step * f64::from(i))).sum();
        sum * step / 3.0
    }

    /// Pressure of two plain rings: that of unit pressure's displacements, Lamé's `σ = A ± B/r²`, `u = (1-ν)A r/E + (1+ν)B/(E r)`.
    fn pressure(&self, interference: f64) -> f64 {
        let joint = self.get("nominal_mm") / 2.0;
        let displaced = |part: &str, other: f64| {
            let (a, b) = lame(joint, other);
            let [modulus, poisson] =
                ["elastic_modulus_mpa", "poisson"].map(|value| self.get(&format!("basis/{part}/{value}")));
            ((1.0 - poisson) * a * joint + (1.0 + poisson) * b / joint) / modulus
        };
        let closes = -displaced("inner", self.or("basis/inner/inside_mm", 0.0) / 2.0);
        let opens = displaced("outer", self.get("basis/outer/outside_mm") / 2.0);
        interference / 2.0 / (closes + opens)
    }

    fn hoop(&self, pressure: f64) -> f64 {
        let joint = self.get("nominal_mm") / 2.0;
        let (a, b) = lame(joint, self.get("basis/outer/outside_mm") / 2.0);
        pressure * (a + b / (joint * joint))
    }

    /// The surface that rubs.
    fn rubbed(&self) -> f64 {
        PI * self.get("nominal_mm") * self.get("press/length_mm")
    }

    fn kind(&self) -> &'static str {
        let (most, least) = (self.interference("largest", "smallest"), self.interference("smallest", "largest"));
        match () {
            () if most <= 1e-12 => "clearance fit",
            () if least >= -1e-12 => "interference fit",
            () => "transition fit",
        }
    }

    fn verdict(&self) -> &'static str {
        let (least, most) = (self.arrival("largest", "smallest"), self.arrival("smallest", "largest"));
        let placing = self.get("at_bore/placing_clearance_um");
        match () {
            () if least >= placing => "drops in",
            () if (least + most) / 2.0 >= placing => "some will not",
            () => "press",
        }
    }
}

/// Lamé's constants of a ring under unit pressure at `loaded` and none at `free`.
fn lame(loaded: f64, free: f64) -> (f64, f64) {
    let (loaded, free) = (loaded * loaded, free * free);
    (loaded / (free - loaded), loaded * free / (free - loaded))
}
