use super::args::OutputFlags;
use super::failure::Failure;
use std::ffi::OsStr;
use std::io::{ErrorKind, Write};
use std::path::Path;
use tempfile::Builder;

/// How the names of pictures end.
const PICTURES: [&str; 6] = ["svg", "png", "jpg", "jpeg", "gif", "pdf"];

/// Where results go, and what must not be written over.
pub(super) struct Output<'a> {
    flags: &'a OutputFlags,
    inputs: Vec<&'a Path>,
}

impl<'a> Output<'a> {
    pub(super) fn new(flags: &'a OutputFlags, inputs: Vec<&'a Path>) -> Self {
        Self { flags, inputs }
    }

    /// The result as text, to standard output or the file of `-o`.
    pub(super) fn write_result(&self, bytes: &[u8]) -> Result<(), Failure> {
        self.may_write_text()?;
        match self.flags.file.as_deref().filter(|path| *path != Path::new("-")) {
            Some(path) => self.write_file(path, bytes),
            None => to_stdout(bytes),
        }
    }

    /// A whole file, or nothing: written beside its place, then moved there.
    pub(super) fn write_file(&self, path: &Path, bytes: &[u8]) -> Result<(), Failure> {
        self.may_write(path)?;
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        let failed = |error: &std::io::Error| {
            Failure::file(path, "cannot write", error, "choose a folder that exists and may be written")
        };
        let mut file = readable_by_others().tempfile_in(folder).map_err(|error| failed(&error))?;
        file.write_all(bytes).and_then(|()| file.as_file().sync_all()).map_err(|error| failed(&error))?;
        file.persist(path).map_err(|error| failed(&error.error))?;
        Ok(())
    }

    /// Whether the file of `-o`, if there is one, may take the result: a text under the name of a picture opens nowhere.
    pub(super) fn may_write_text(&self) -> Result<(), Failure> {
        let Some(path) = self.flags.file.as_deref().filter(|path| *path != Path::new("-")) else { return Ok(()) };
        let ending = path.extension().and_then(OsStr::to_str).map(str::to_lowercase);
        if ending.is_some_and(|ending| PICTURES.contains(&ending.as_str())) {
            return Err(Failure::plain(
                format!("{} is the name of a picture, and the result is text", path.display()),
                "end the name in .txt, .json, .csv or .html; pictures are drawn by `seatwise plan JOB --plot FILE` and \
                 `seatwise section JOB -o FILE`",
            ));
        }
        self.may_write(path)
    }

    /// Whether `path` is free to be written.
    pub(super) fn may_write(&self, path: &Path) -> Result<(), Failure> {
        if self.inputs.iter().any(|input| same_file(input, path)) {
            return Err(Failure::plain(
                format!("{} is an input of this run and is never written over", path.display()),
                "name another file for the result",
            ));
        }
        if path.exists() && !self.flags.force {
            return Err(Failure::plain(
                format!("{} exists", path.display()),
                "name another file, or add --force to write over it",
            ));
        }
        Ok(())
    }
}

/// Temporary files are private by default; a result has the permissions of any new file.
fn readable_by_others() -> Builder<'static, 'static> {
    let mut builder = Builder::new();
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    builder
}

fn same_file(a: &Path, b: &Path) -> bool {
    match (a.canonicalize(), b.canonicalize()) {
        (Ok(a), Ok(b)) => a == b,
        _ => a == b,
    }
}

fn to_stdout(bytes: &[u8]) -> Result<(), Failure> {
    let mut stdout = anstream::stdout().lock();
    stdout.write_all(bytes).and_then(|()| stdout.flush()).map_err(|error| match error.kind() {
        ErrorKind::BrokenPipe => Failure::ReaderGone,
        _ => Failure::plain(format!("cannot write the result: {error}"), "check the disk or the pipe"),
    })
}
