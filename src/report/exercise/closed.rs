//! Closed formulas of a case with constant values, where a working says in words how a result is found.

use crate::plan::exercise::Constants;
use crate::plan::{ServiceFit, Soak, Window};
use crate::quantity::{ThermodynamicTemperature, Time, Worked};
use crate::report::working::{Formula, Line, Seat, Symbol, Value, Which, in_words, line, of, symbol, v};

const BALANCE: &str = "m · c · dT/dt = −A · H · (T − T_s) / (1 + H · Bi / (n · h)) with H = h_s + ε · σ · (T² + T_s²) · (T + T_s), \
                       temperatures in kelvin and σ = 5.670374419e-8 W/(m² K⁴), is followed in small steps from T_e to T_c";
const RADIATION: &str = "radiation: Stefan-Boltzmann constant, CODATA 2018";
const COEFFICIENT: &str = "the coefficient of expansion is constant";
/// The place of what a job states and its plan does not repeat.
const STATED: &str = "job:";

const SHOP: Symbol = symbol("T", "s");
const MEDIUM: Symbol = symbol("T", "m");
const LEAVING: Symbol = symbol("T", "e");
const CLEARS: Symbol = symbol("T", "c");
const CONSTANT: Symbol = symbol("τ", "");
const REFERENCE: Symbol = symbol("T", "20");

/// A seat with constant values.
#[derive(Clone, Copy)]
pub(super) struct Closed<'a> {
    pub(super) seat: Seat<'a>,
    pub(super) constants: &'a Constants,
}

/// Every closed formula that the case allows.
pub(super) fn lines(case: Closed<'_>) -> Vec<Line> {
    let mut lines = case.sizes();
    lines.extend(case.clears());
    if let Some(soak) = &case.seat.seat.chill {
        lines.extend(case.chilled(soak));
    }
    for (number, state) in case.seat.seat.service.iter().enumerate() {
        lines.extend(case.in_service(number, state));
    }
    lines
}

impl Closed<'_> {
    /// A value that the job states.
    fn stated(self, symbol: Symbol, meaning: String, amount: Worked, key: &str) -> Value {
        Value { symbol, meaning, amount, at: format!("{STATED}{key}") }
    }

    fn temperature(self, symbol: Symbol, meaning: &str, of: ThermodynamicTemperature, at: &str) -> Value {
        self.seat.value(symbol, meaning, Worked::Temperature(of), at)
    }

    fn time(self, symbol: Symbol, meaning: &str, of: Time, at: &str) -> Value {
        self.seat.value(symbol, meaning, Worked::Time(of), at)
    }

    fn shop(self) -> Value {
        self.temperature(SHOP, "temperature of the shop", self.seat.plan.job.bench.temperature, "basis/shop_c")
    }

    fn coefficient(self, which: Which) -> Value {
        let (place, key) = match which {
            Which::Inner => (0, "bearing.material.expansion"),
            Which::Outer => (1, "housing.material.expansion"),
        };
        let meaning = format!("coefficient of expansion of {}", self.seat.material(which));
        self.stated(of("α", which), meaning, Worked::Coefficient(self.constants.expansion[place]), key)
    }

    /// Limits of size from the nominal size and the deviations of the class.
    fn sizes(self) -> Vec<Line> {
        let Some(deviations) = self.constants.deviations else { return Vec::new() };
        let mut lines = Vec::new();
        for (which, ends, key) in
            [(Which::Inner, deviations[0], "fit/inner_limits_um"), (Which::Outer, deviations[1], "fit/outer_limits_um")]
        {
            let class = if which == Which::Inner { &self.seat.seat.inner.basis } else { &self.seat.seat.outer.basis };
            for (largest, deviation, end) in [(false, ends[0], "lower"), (true, ends[1], "upper")] {
                let sign = of("e", which);
                let meaning = format!("{end} deviation of the {}, {class}", self.seat.name(which));
                let put_in = self.seat.value(sign, meaning, Worked::Small(deviation), &format!("{key}/{end}"));
                let what = format!("{} {}", if largest { "Largest" } else { "Smallest" }, self.seat.name(which));
                let formula = v(self.seat.joint().symbol) + v(sign);
                let source = vec![self.seat.source("sizes"), "deviations: ISO 286-1 and ISO 286-2, tables".to_owned()];
                lines.push(line(
                    what,
                    self.seat.size(which, largest),
                    formula,
                    vec![self.seat.joint(), put_in],
                    source,
                ));
            }
        }
        lines
    }

    /// The temperature of one part that gives the tightest case its placing clearance.
    fn clears(self) -> Vec<Line> {
        let clears = self.seat.seat.clears_at;
        [(Which::Inner, clears.inner, "clears_at/inner_c"), (Which::Outer, clears.outer, "clears_at/outer_c")]
            .into_iter()
            .filter_map(|(which, at, key)| {
                let result = self.clears_value(which, at?, key);
                let placing = Worked::Small(self.seat.seat.history.placing_clearance);
                let placing =
                    self.seat.value(symbol("C", "p"), "placing clearance", placing, "at_bore/placing_clearance_um");
                let interference = self.seat.interference();
                let size = self.seat.size(which, which == Which::Inner);
                let step = (v(placing.symbol) + v(interference.symbol)) / (v(of("α", which)) * v(size.symbol));
                let formula = if which == Which::Inner { v(SHOP) - step } else { v(SHOP) + step };
                let put_in = vec![self.shop(), placing, interference, self.coefficient(which), size];
                let what = format!("Temperature of the {} that clears", self.seat.name(which));
                let source = vec![
                    COEFFICIENT.to_owned(),
                    self.seat.source(&format!("{}, expansion", self.seat.material(which))),
                ];
                Some(line(what, result, formula, put_in, source))
            })
            .collect()
    }

    fn clears_value(self, which: Which, at: ThermodynamicTemperature, key: &str) -> Value {
        let end = if which == Which::Inner { "or colder" } else { "or warmer" };
        self.temperature(CLEARS, &format!("temperature that clears, {end}"), at, key)
    }

    fn chilled(self, soak: &Soak) -> Vec<Line> {
        let Some(time_constant) = soak.time_constant else { return Vec::new() };
        let law = vec![self.seat.source("temperatures against time")];
        let tau = || self.time(CONSTANT, "time constant", time_constant, "chill/time_constant_s");
        let medium = || self.temperature(MEDIUM, "temperature of the bath", soak.medium_temperature, "chill/medium_c");
        let leaving = || self.temperature(LEAVING, "temperature on leaving", soak.end, "chill/end_c");
        let hold = self.time(symbol("t", ""), "time in the bath", soak.hold, "chill/hold_s");
        let mut lines = vec![
            self.time_constant(soak, tau()),
            line(
                "Temperature on leaving the bath",
                leaving(),
                v(MEDIUM) + (v(SHOP) - v(MEDIUM)) / (v(hold.symbol) / v(CONSTANT)).exp(),
                vec![medium(), self.shop(), hold, tau()],
                law.clone(),
            ),
            self.strain(
                Which::Inner,
                (self.seat.part(Which::Inner).strain_at_bore, "strain_at_bore_um_m", "its temperature on arrival"),
                leaving(),
            ),
            self.strain(
                Which::Outer,
                (self.seat.part(Which::Outer).strain_at_bore, "strain_at_bore_um_m", "its temperature on arrival"),
                self.shop(),
            ),
        ];
        let (Some(clears), Some(least)) = (self.seat.seat.clears_at.inner, self.seat.seat.time_to_clear.tightest)
        else {
            return lines;
        };
        let clears = || self.clears_value(Which::Inner, clears, "clears_at/inner_c");
        lines.push(line(
            "Shortest time in the bath that clears",
            self.time(symbol("t", "c"), "shortest time that clears", least, "time_to_clear_s/tightest"),
            v(CONSTANT) * ((v(SHOP) - v(MEDIUM)) / (v(CLEARS) - v(MEDIUM))).ln(),
            vec![tau(), self.shop(), medium(), clears()],
            law,
        ));
        lines.extend(self.window(soak, vec![leaving(), clears(), self.shop()]));
        lines
    }

    fn time_constant(self, soak: &Soak, result: Value) -> Line {
        let [mass, heat_capacity, film, area, biot, way_out] = self.body(soak);
        let inside = Formula::Whole(1) + v(biot.symbol) / v(way_out.symbol);
        let formula = v(mass.symbol) * v(heat_capacity.symbol) * inside / (v(film.symbol) * v(area.symbol));
        let source = vec![self.seat.source("temperatures against time")];
        line("Time constant in the bath", result, formula, vec![mass, heat_capacity, biot, way_out, film, area], source)
    }

    /// Mass, heat capacity, film in the bath, surface, Biot number and the number below it.
    fn body(self, soak: &Soak) -> [Value; 6] {
        let material = self.seat.material(Which::Inner);
        let capacity = Worked::HeatCapacity(self.constants.heat_capacity);
        [
            self.seat.value(symbol("m", ""), "mass of the part", Worked::Mass(soak.mass), "chill/mass_kg"),
            self.stated(
                symbol("c", ""),
                format!("heat capacity of {material}"),
                capacity,
                "bearing.material.heat_capacity",
            ),
            self.seat.value(
                symbol("h", ""),
                "film coefficient in the bath",
                Worked::Film(soak.film),
                "chill/film_w_m2k",
            ),
            self.seat.value(symbol("A", ""), "surface of the part", Worked::Area(soak.area), "chill/area_m2"),
            self.seat.value(symbol("Bi", ""), "Biot number in the bath", Worked::Number(soak.biot), "chill/biot"),
            self.stated(
                symbol("n", ""),
                "number of the way that heat takes out".to_owned(),
                Worked::Number(self.constants.way_out),
                "way_out",
            ),
        ]
    }

    /// Change of length for each length, from the coefficient.
    fn strain(self, which: Which, (strain, at, to): (f64, &str, &str), temperature: Value) -> Line {
        let reference = self.stated(
            REFERENCE,
            "temperature at which sizes are given".to_owned(),
            Worked::Temperature(self.constants.reference),
            "reference",
        );
        let result = self.seat.strain(which, strain, at, to.to_owned());
        let formula = v(of("α", which)) * (v(temperature.symbol) - v(REFERENCE));
        let what = format!("Change of length of the {} for each length, to {to}", self.seat.name(which));
        let source =
            vec![COEFFICIENT.to_owned(), self.seat.source(&format!("{}, expansion", self.seat.material(which)))];
        line(what, result, formula, vec![self.coefficient(which), temperature, reference], source)
    }

    fn window(self, soak: &Soak, ends: Vec<Value>) -> Option<Line> {
        let (Window::Lasts(lasts), Some(film)) = (self.seat.seat.window.tightest, self.constants.shop_film) else {
            return None;
        };
        let mut put_in = ends;
        put_in.extend(self.body(soak));
        put_in.extend([
            self.stated(symbol("h", "s"), "film coefficient in the shop".to_owned(), Worked::Film(film), "bench.film"),
            self.stated(
                symbol("ε", ""),
                "emissivity of the part".to_owned(),
                Worked::Number(self.constants.emissivity),
                "bearing.material.emissivity",
            ),
        ]);
        let result = self.time(symbol("t", "w"), "time in the air of the shop", lasts, "window_s/tightest");
        let source = vec![self.seat.source("temperatures against time"), RADIATION.to_owned()];
        Some(in_words("How long the placing clearance lasts", result, BALANCE, put_in, source))
    }

    fn in_service(self, number: usize, state: &ServiceFit) -> Vec<Line> {
        let at = format!("strain_in_service_um_m/{number}");
        let temperature = |which: Which| {
            let (of_part, key) =
                if which == Which::Inner { (state.inner, "inner_c") } else { (state.outer, "outer_c") };
            let meaning = format!("temperature of the {} in service", self.seat.name(which));
            let symbol = of("T", which);
            self.temperature(symbol, &meaning, of_part, &format!("service/{number}/{key}"))
        };
        [Which::Inner, Which::Outer]
            .into_iter()
            .filter_map(|which| {
                let strain = *self.seat.part(which).strain_in_service.get(number)?;
                Some(self.strain(which, (strain, &at, "its temperature in service"), temperature(which)))
            })
            .collect()
    }
}
