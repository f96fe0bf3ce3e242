use super::args::OwnFlags;
use super::failure::{Failure, Mistake, named};
use crate::job::LONGEST_TEXT;
use crate::stock::Library;
use crate::stock::material::Material;
use crate::stock::medium::Medium;
use std::fs::File;
use std::io::Read;
use std::path::Path;

const MEDIA: &str = "write it as `seatwise log --keep-medium` does, one [[medium]] or several";
const MATERIAL: &str = "give a material file in TOML; materials/_template.toml shows one";

/// The text of `path`; `-` is standard input.
///
/// Never reads more than a job may hold, so that a wrong file is refused before it fills memory.
pub(super) fn text(path: &Path, help: &str) -> Result<String, Failure> {
    let name = named(path);
    let bytes = if path == Path::new("-") {
        bounded(std::io::stdin().lock())
    } else {
        if path.is_dir() {
            return Err(Failure::plain(format!("{name} is a folder, not a file"), help).of_file(path));
        }
        File::open(path).and_then(bounded)
    }
    .map_err(|error| Failure::file(path, "cannot read", &error, help))?;
    if bytes.len() > LONGEST_TEXT {
        return Err(Failure::plain(
            format!("{name} is longer than {LONGEST_TEXT} bytes, too long for this file"),
            help,
        )
        .of_file(path));
    }
    String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        Failure::plain(format!("{name} is not UTF-8 text: byte {at} begins no character"), help).of_file(path)
    })
}

fn bounded(reader: impl Read) -> std::io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    reader.take(LONGEST_TEXT as u64 + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

/// The library with the user's own materials and media; the stem of a material's file is its id.
pub(super) fn library(own: &OwnFlags) -> Result<Library, Failure> {
    let materials = Failure::gathered(own.material.iter().map(|path| material(path)))?;
    let media = Failure::gathered(own.medium.iter().map(|path| media(path)))?;
    Ok(Library { materials, media: media.concat() })
}

fn media(path: &Path) -> Result<Vec<Medium>, Failure> {
    let text = text(path, MEDIA)?;
    Medium::check(&text).map_err(|errors| {
        let problems = errors.into_iter().map(|error| Mistake {
            message: error.to_string(),
            at: error.span().unwrap_or(0..0),
            help: error.help().to_owned(),
            allowed: error.allowed().map(str::to_owned),
        });
        Failure::Text { path: named(path), problems: problems.collect(), text }
    })
}

fn material(path: &Path) -> Result<Material, Failure> {
    let text = text(path, MATERIAL)?;
    let id = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
    Material::check(&id, &text).map_err(|errors| {
        let problems = errors.into_iter().map(|error| Mistake {
            message: error.to_string(),
            at: error.span().unwrap_or(0..0),
            help: error.help(),
            allowed: error.allowed().map(str::to_owned),
        });
        Failure::Text { path: named(path), problems: problems.collect(), text }
    })
}
