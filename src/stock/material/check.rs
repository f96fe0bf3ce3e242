//! From the raw file to a checked [`Material`]: ranges, tables, limits.

use std::ops::Range;
use std::sync::Arc;

use toml::Spanned;
use uom::si::f64::{Pressure, ThermodynamicTemperature};
use uom::si::{pressure::megapascal, thermodynamic_temperature::degree_celsius};

use super::raw::{RawCaution, RawLimit, RawMaterial};
use super::tables::Choice;
use super::{
    Bounds, Material, MaterialError, Properties, Provenance, Side, Strength, TemperatureCaution, TemperatureLimit,
};
use crate::stock::curve::Curve;
use crate::stock::recover::{self, KeyFault, Step};

/// 0 °C in K.
pub(super) const ZERO_C_IN_K: f64 = 273.15;
/// Widest temperatures that any table or limit may name, K: liquid helium to the melting of steel.
pub(super) const TEMPERATURE_K: (f64, f64) = (4.0, 1800.0);
/// Widest values of each property, from polymers to ceramics, with some room; what lies outside is a slip of units.
const DENSITY_KG_M3: (f64, f64) = (500.0, 23_000.0);
const MODULUS_GPA: (f64, f64) = (0.05, 700.0);
const POISSON_RATIO: (f64, f64) = (0.0, 0.5);
const STRENGTH_MPA: (f64, f64) = (1.0, 5000.0);
const HEAT_CAPACITY_J_KGK: (f64, f64) = (5.0, 5000.0);
const CONDUCTIVITY_W_MK: (f64, f64) = (0.01, 3000.0);
const EMISSIVITY: (f64, f64) = (0.0, 1.0);
/// Temperatures that hold 20 °C, for what depends on limits that are wrong themselves.
const UNLIMITED_C: [f64; 2] = [-200.0, 200.0];
/// A material without a mistake, for what is missing in one that has some.
const SOUND: &str = include_str!("../../../materials/bearing-steel.toml");
pub(super) type Checked<T> = Result<T, MaterialError>;

impl Material {
    /// Reads a material from the text of its file and checks every value.
    ///
    /// The form is that of `materials/_template.toml`; embedded and user files pass the same checks.
    ///
    /// # Errors
    /// The first of [`Self::check`]'s errors.
    pub fn parse(id: &str, text: &str) -> Result<Self, MaterialError> {
        let unnamed = || Checker { id }.table_error("material", "could not be checked", None);
        Self::check(id, text).map_err(|errors| errors.into_iter().next().unwrap_or_else(unnamed))
    }

    /// The same with every mistake of the file.
    ///
    /// # Errors
    /// Each [`MaterialError`] with the bytes of the text to underline, in the order of the text: unknown or missing keys, values of
    /// another kind or out of range, a table that does not rise, lacks 293.15 K or ends before the material's limits, a section
    /// without source or status.
    pub fn check(id: &str, text: &str) -> Result<Self, Vec<MaterialError>> {
        let (raw, keys) = recover::read::<RawMaterial>(text, SOUND);
        let mut faults = Faults::default();
        let material = raw.and_then(|raw| Checker { id }.material(raw, keys.is_empty(), &mut faults));
        // Of a section with a wrong key, and of what was filled in for it, nothing else is said.
        let of_text = |error: &MaterialError| error.span().is_none_or(|span| span.start <= text.len());
        let spoiled = |error: &MaterialError| keys.iter().any(|fault| section(fault).as_deref() == error.section());
        let mut errors: Vec<MaterialError> = faults.0;
        errors.retain(|error| of_text(error) && !spoiled(error));
        errors.extend(keys.iter().map(|fault| MaterialError::Shape {
            id: id.to_owned(),
            section: section(fault),
            message: fault.message.clone(),
            span: Some(fault.at.clone()),
        }));
        errors.sort_by_key(|error| error.span().map_or(0, |span| span.start));
        material.filter(|_| errors.is_empty()).ok_or(errors)
    }
}

/// The section in which a key is wrong; none at the top of the file.
fn section(fault: &KeyFault) -> Option<String> {
    fault.path.iter().find_map(|step| match step {
        Step::Key(key) => Some(key.clone()),
        Step::Item(_) => None,
    })
}

/// Mistakes that were found; the checks go on after each.
#[derive(Default)]
struct Faults(Vec<MaterialError>);

impl Faults {
    fn take<T>(&mut self, checked: Checked<T>) -> Option<T> {
        checked.map_err(|error| self.0.push(error)).ok()
    }
}

/// Checks on behalf of one material, whose id every message carries.
pub(super) struct Checker<'a> {
    pub id: &'a str,
}

impl Checker<'_> {
    /// `whole`: nothing was filled in, so that sections may be held against each other.
    fn material(&self, raw: RawMaterial, whole: bool, faults: &mut Faults) -> Option<Material> {
        let names = faults.take(self.names(&raw));
        let sources = raw.sources();
        let density_kg_m3 = faults.take(self.number("density.kg_m3", &raw.density.kg_m3, DENSITY_KG_M3));
        let coldest = faults.take(self.limit("coldest", &raw.coldest));
        let hottest = faults.take(self.limit("hottest", &raw.hottest));
        let limits = [*raw.coldest.c.get_ref(), *raw.hottest.c.get_ref()];
        let around_20 = faults.take(self.require(
            limits[0] < 20.0 && limits[1] > 20.0,
            "coldest.c",
            limits[0],
            "below 20 °C, and `hottest.c` above",
            raw.coldest.c.span(),
        ));
        // A modulus of one value is good between the limits; wrong limits are no mistake of its own.
        let limits = around_20.map_or(UNLIMITED_C, |()| limits);
        let modulus_pa = faults.take(self.modulus(&raw, limits));
        let poisson_ratio = faults.take(self.number("poisson_ratio.value", &raw.poisson_ratio.value, POISSON_RATIO));
        let strength = faults.take(self.strength(&raw));
        let expansion = faults.take(self.expansion(&raw.expansion.table_k_um_m));
        let heat_capacity = faults.take(self.heat_capacity(&raw));
        let conductivity = faults.take(self.conductivity(&raw));
        let emissivity = faults.take(self.emissivity(&raw));
        let cautions = faults.take(self.cautions(&raw.caution));
        names?;
        let material = Properties {
            id: self.id.to_owned(),
            density_kg_m3: density_kg_m3?,
            modulus_pa: modulus_pa?,
            poisson_ratio: poisson_ratio?,
            strength: strength?,
            expansion: expansion?,
            heat_capacity: heat_capacity?,
            conductivity: conductivity?,
            emissivity: emissivity?,
            surface: raw.emissivity.surface,
            coldest: coldest?,
            hottest: hottest?,
            cautions: cautions?,
            names: raw.names.into_inner(),
            family: raw.family,
            about: raw.about,
            sources,
        };
        let material = Material(Arc::new(material));
        if whole {
            faults.take(self.covers_limits(&material, (raw.coldest.c.span(), raw.hottest.c.span())))?;
        }
        Some(material)
    }

    fn names(&self, raw: &RawMaterial) -> Checked<()> {
        let well_formed = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        if self.id.is_empty() || !self.id.chars().all(well_formed) {
            return Err(self.out_of_range("id", self.id, "lower-case letters, digits and hyphens", None));
        }
        if raw.names.get_ref().iter().any(|name| name.trim().is_empty()) {
            return Err(self.out_of_range("names", "a blank name", "names of a word or more", Some(raw.names.span())));
        }
        Ok(())
    }

    fn modulus(&self, raw: &RawMaterial, limits_c: [f64; 2]) -> Checked<Curve> {
        let modulus = &raw.elastic_modulus;
        let curve = self.choice(&Choice {
            section: "elastic_modulus",
            value_key: "gpa",
            table_key: "table_k_gpa",
            value: modulus.gpa.as_ref(),
            between: modulus.gpa.as_ref().map(|value| (limits_c.as_slice(), value.span())),
            table: modulus.table_k_gpa.as_ref(),
            bounds: MODULUS_GPA,
        })?;
        self.scaled(&curve, 1e9, "elastic_modulus")
    }

    fn strength(&self, raw: &RawMaterial) -> Checked<Strength> {
        let mpa = self.number("strength.mpa", &raw.strength.mpa, STRENGTH_MPA)?;
        Ok(Strength { value: Pressure::new::<megapascal>(mpa), kind: raw.strength.kind })
    }

    fn heat_capacity(&self, raw: &RawMaterial) -> Checked<Curve> {
        let heat = &raw.heat_capacity;
        self.choice(&Choice {
            section: "heat_capacity",
            value_key: "j_kgk",
            table_key: "table_k_j_kgk",
            value: heat.j_kgk.as_ref(),
            between: heat.between_c.as_ref().map(|b| (b.get_ref().as_slice(), b.span())),
            table: heat.table_k_j_kgk.as_ref(),
            bounds: HEAT_CAPACITY_J_KGK,
        })
    }

    fn conductivity(&self, raw: &RawMaterial) -> Checked<Curve> {
        let conductivity = &raw.conductivity;
        self.choice(&Choice {
            section: "conductivity",
            value_key: "w_mk",
            table_key: "table_k_w_mk",
            value: conductivity.w_mk.as_ref(),
            between: conductivity.between_c.as_ref().map(|b| (b.get_ref().as_slice(), b.span())),
            table: conductivity.table_k_w_mk.as_ref(),
            bounds: CONDUCTIVITY_W_MK,
        })
    }

    fn emissivity(&self, raw: &RawMaterial) -> Checked<Bounds> {
        let low = self.number("emissivity.low", &raw.emissivity.low, EMISSIVITY)?;
        let high = self.number("emissivity.high", &raw.emissivity.high, EMISSIVITY)?;
        self.require(low <= high, "emissivity.high", high, "at least `emissivity.low`", raw.emissivity.high.span())?;
        Ok(Bounds { low, high })
    }

    fn limit(&self, section: &str, raw: &RawLimit) -> Checked<TemperatureLimit> {
        let (low, high) = (TEMPERATURE_K.0 - ZERO_C_IN_K, TEMPERATURE_K.1 - ZERO_C_IN_K);
        self.number(&format!("{section}.c"), &raw.c, (low, high))?;
        Ok(raw.to_limit())
    }

    fn cautions(&self, raw: &[Spanned<RawCaution>]) -> Checked<Vec<TemperatureCaution>> {
        raw.iter().map(|caution| self.caution(caution)).collect()
    }

    fn caution(&self, raw: &Spanned<RawCaution>) -> Checked<TemperatureCaution> {
        let caution = raw.get_ref();
        let (side, celsius) = match (caution.below_c, caution.above_c) {
            (Some(celsius), None) => (Side::Below, celsius),
            (None, Some(celsius)) => (Side::Above, celsius),
            _ => return Err(self.table_error("caution", "needs either `below_c` or `above_c`", Some(raw.span()))),
        };
        let kelvin = celsius + ZERO_C_IN_K;
        let known = kelvin >= TEMPERATURE_K.0 && kelvin <= TEMPERATURE_K.1;
        self.require(known, "caution", celsius, "a temperature in °C", raw.span())?;
        Ok(TemperatureCaution {
            side,
            temperature: ThermodynamicTemperature::new::<degree_celsius>(celsius),
            text: caution.text.clone(),
            provenance: Provenance { source: caution.source.clone(), status: caution.status.clone() },
        })
    }

    /// Tables of expansion, heat capacity and conductivity must reach the coldest and the hottest allowed.
    fn covers_limits(&self, material: &Material, spans: (Range<usize>, Range<usize>)) -> Checked<()> {
        use uom::si::thermodynamic_temperature::kelvin;
        let (cold, hot) =
            (material.coldest().temperature.get::<kelvin>(), material.hottest().temperature.get::<kelvin>());
        let tables = [
            ("expansion", material.expansion()),
            ("heat_capacity", material.heat_capacity()),
            ("conductivity", material.conductivity()),
            ("elastic_modulus", &material.0.modulus_pa),
        ];
        for (section, curve) in tables {
            let (from, to) = curve.range();
            for (key, limit, span) in [("coldest.c", cold, &spans.0), ("hottest.c", hot, &spans.1)] {
                if limit < from - 1e-9 || limit > to + 1e-9 {
                    let value = format!("{:.1} °C", limit - ZERO_C_IN_K);
                    let allowed = format!(
                        "inside the table of `{section}`, {:.1} to {:.1} °C",
                        from - ZERO_C_IN_K,
                        to - ZERO_C_IN_K
                    );
                    return Err(self.out_of_range(key, &value, &allowed, Some(span.clone())));
                }
            }
        }
        Ok(())
    }

    pub(super) fn number(&self, key: &str, value: &Spanned<f64>, (low, high): (f64, f64)) -> Checked<f64> {
        let number = *value.get_ref();
        let inside = number > low && number < high;
        self.require(inside, key, number, &format!("between {low} and {high}"), value.span())?;
        Ok(number)
    }

    pub(super) fn require(&self, met: bool, key: &str, value: f64, allowed: &str, span: Range<usize>) -> Checked<()> {
        if met { Ok(()) } else { Err(self.out_of_range(key, &value.to_string(), allowed, Some(span))) }
    }

    pub(super) fn out_of_range(
        &self,
        key: &str,
        value: &str,
        allowed: &str,
        span: Option<Range<usize>>,
    ) -> MaterialError {
        MaterialError::Value {
            id: self.id.to_owned(),
            property: key.to_owned(),
            value: value.to_owned(),
            allowed: allowed.to_owned(),
            span,
        }
    }

    pub(super) fn table_error(&self, key: &str, problem: &str, span: Option<Range<usize>>) -> MaterialError {
        MaterialError::Table { id: self.id.to_owned(), property: key.to_owned(), problem: problem.to_owned(), span }
    }
}
