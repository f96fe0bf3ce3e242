use super::Outcome;
use super::args::{Format, MaterialsFlags};
use super::failure::Failure;
use super::input;
use super::output::Output;
use crate::quantity;
use crate::report::stock;
use crate::stock::curve::CurveError;
use crate::stock::{Library, Material, material};

const LIST: &str = "`seatwise materials` lists them";

pub(super) fn run(flags: &MaterialsFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let library = input::library(&flags.own)?;
    let text = match &flags.name {
        None => list(&library, flags.format, output.columns())?,
        Some(name) => {
            let material = library.material(name).map_err(|error| Failure::plain(error.to_string(), LIST))?;
            one(&material, flags, output.columns())?
        }
    };
    Ok(Outcome::done(text))
}

fn list(library: &Library, format: Format, columns: usize) -> Result<String, Failure> {
    let mut all = library.materials.clone();
    for id in material::embedded_ids() {
        all.push(material::embedded(id).map_err(|error| Failure::plain(error.to_string(), "report this"))?);
    }
    match format {
        Format::Text => Ok(stock::materials_text(&all, columns)),
        Format::Json => stock::materials_json(&all).map_err(Failure::unprintable),
    }
}

fn one(material: &Material, flags: &MaterialsFlags, columns: usize) -> Result<String, Failure> {
    let Some(at) = &flags.at else {
        return match flags.format {
            Format::Text => Ok(stock::material_text(material, columns)),
            Format::Json => stock::material_json(material).map_err(Failure::unprintable),
        };
    };
    let temperature = quantity::temperature(at)
        .map_err(|error| Failure::plain(format!("--at: {}", error.problem), error.help))?
        .value;
    match flags.format {
        Format::Text => stock::material_at_text(material, temperature, columns),
        Format::Json => stock::material_at_json(material, temperature),
    }
    .map_err(|error| outside(material, &error))
}

fn outside(material: &Material, error: &CurveError) -> Failure {
    let message = match error {
        CurveError::Outside { asked, from, to } => format!(
            "{} is not known at {:.1} °C: its tables run from {:.1} °C to {:.1} °C",
            material.id(),
            asked - 273.15,
            from - 273.15,
            to - 273.15
        ),
        other => other.to_string(),
    };
    Failure::plain(message, "choose a temperature in that range; nothing is extrapolated")
}
