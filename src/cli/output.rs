//! Where results go: whole or not at all, never over an input, and over another file only with `--force`.

use super::args::OutputFlags;
use super::failure::{Failure, reason};
use super::terminal;
use crate::quantity::System;
use crate::report::Layout;
use std::ffi::OsStr;
use std::fs::{self, OpenOptions};
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};
use tempfile::{Builder, NamedTempFile};

/// How the names of pictures end.
const PICTURES: [&str; 6] = ["svg", "png", "jpg", "jpeg", "gif", "pdf"];

const FOLDER: &str = "choose a folder that exists, may be written and has room";

/// A file and what goes into it.
pub(super) type NamedBytes = (PathBuf, Vec<u8>);

/// Where results go, and what must not be written over.
pub(super) struct Output<'a> {
    flags: &'a OutputFlags,
    inputs: Vec<&'a Path>,
}

impl<'a> Output<'a> {
    pub(super) fn new(flags: &'a OutputFlags, inputs: Vec<&'a Path>) -> Self {
        Self { flags, inputs }
    }

    /// The file of `-o`; none for standard output.
    pub(super) fn file(&self) -> Option<&'a Path> {
        self.flags.file.as_deref().filter(|path| *path != Path::new("-"))
    }

    /// Columns of a text: those of the terminal, or the usual ones of a file.
    pub(super) fn columns(&self) -> usize {
        if self.flags.file.is_some() { Layout::USUAL_COLUMNS } else { terminal::of_result() }
    }

    /// How a text in these units is set.
    pub(super) fn layout(&self, system: System) -> Layout {
        Layout { system, columns: self.columns() }
    }

    /// Whether files that exist may be written over.
    pub(super) fn forced(&self) -> bool {
        self.flags.force
    }

    /// Every file and the result, or nothing of all that.
    ///
    /// Each file is written beside its place first; only when all of them are whole and the result is printed do they move
    /// there.
    pub(super) fn write_all(&self, result: Option<&str>, files: &[NamedBytes]) -> Result<(), Failure> {
        let mut wanted: Vec<(&Path, &[u8])> = files.iter().map(|(path, bytes)| (path.as_path(), &bytes[..])).collect();
        let mut printed = result.map(str::as_bytes);
        if let Some((path, bytes)) = self.file().zip(printed) {
            self.may_write_text()?;
            wanted.push((path, bytes));
            printed = None;
        }
        for (i, (path, _)) in wanted.iter().enumerate() {
            self.may_write(path)?;
            if wanted[..i].iter().any(|(other, _)| same_file(other, path)) {
                let message = format!("{} is named for two results of this run", path.display());
                return Err(Failure::plain(message, "name two files"));
            }
        }
        let staged = wanted.iter().map(|(path, bytes)| Staged::new(path, bytes)).collect::<Result<Vec<_>, _>>()?;
        let told = printed.map_or(Ok(()), to_stdout);
        // Who stops reading the text early still wants the picture.
        if matches!(told, Ok(()) | Err(Failure::ReaderGone)) {
            staged.into_iter().try_for_each(|file| file.place(self.flags.force))?;
        }
        told
    }

    /// The result as text, to standard output or the file of `-o`.
    pub(super) fn write_result(&self, text: &str) -> Result<(), Failure> {
        self.write_all(Some(text), &[])
    }

    /// A whole file, or nothing.
    pub(super) fn write_file(&self, path: &Path, bytes: &[u8]) -> Result<(), Failure> {
        self.may_write(path)?;
        Staged::new(path, bytes)?.place(self.flags.force)
    }

    /// Whether the file of `-o`, if there is one, may take the result: a text under the name of a picture opens nowhere.
    pub(super) fn may_write_text(&self) -> Result<(), Failure> {
        let Some(path) = self.file() else { return Ok(()) };
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
        self.is_no_input(path)?;
        if path.is_dir() {
            return Err(Failure::plain(
                format!("{} is a folder, not a file", path.display()),
                "name a file in it for the result",
            ));
        }
        if path.exists() && !is_stream(path) && !self.flags.force {
            return Err(Failure::plain(
                format!("{} exists", path.display()),
                "name another file, or add --force to write over it",
            ));
        }
        Ok(())
    }

    /// Inputs stay as they are, whatever the flags say.
    pub(super) fn is_no_input(&self, path: &Path) -> Result<(), Failure> {
        if self.inputs.iter().any(|input| same_file(input, path)) {
            return Err(Failure::plain(
                format!("{} is an input of this run and is never written over", path.display()),
                "name another file for the result",
            ));
        }
        Ok(())
    }
}

/// A result on its way to its place.
enum Staged<'f> {
    /// Whole, under another name in the same folder.
    Beside { file: NamedTempFile, target: PathBuf },
    /// For a pipe or a device, which takes bytes and cannot be replaced.
    Stream { path: &'f Path, bytes: &'f [u8] },
}

impl<'f> Staged<'f> {
    fn new(path: &'f Path, bytes: &'f [u8]) -> Result<Self, Failure> {
        if is_stream(path) {
            return Ok(Self::Stream { path, bytes });
        }
        let failed = |error: std::io::Error| unwritten(path, &error);
        // Through a link to what it stands for, so that the link stays one.
        let target = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
        let folder = target.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        let mut file = readable_by_others().tempfile_in(folder).map_err(failed)?;
        file.write_all(bytes).and_then(|()| file.as_file().sync_all()).map_err(failed)?;
        if let Ok(old) = fs::metadata(&target) {
            fs::set_permissions(file.path(), old.permissions()).map_err(failed)?;
        }
        Ok(Self::Beside { file, target })
    }

    /// Moves it to its place; without `force` never over a file that has come there in the meantime.
    fn place(self, force: bool) -> Result<(), Failure> {
        match self {
            Self::Beside { file, target } => {
                let moved = if force { file.persist(&target) } else { file.persist_noclobber(&target) };
                moved.map(|_| ()).map_err(|error| unwritten(&target, &error.error))
            }
            Self::Stream { path, bytes } => {
                let written = OpenOptions::new().write(true).open(path).and_then(|mut stream| stream.write_all(bytes));
                written.map_err(|error| match error.kind() {
                    ErrorKind::BrokenPipe => Failure::ReaderGone,
                    _ => unwritten(path, &error),
                })
            }
        }
    }
}

/// A file that could not be written, and what to do.
pub(super) fn unwritten(path: &Path, error: &std::io::Error) -> Failure {
    Failure::file(path, "cannot write", error, FOLDER)
}

/// Whether `path` is a pipe or a device: it takes bytes, and a file must never be put in its place.
pub(super) fn is_stream(path: &Path) -> bool {
    fs::metadata(path).is_ok_and(|data| !data.is_file() && !data.is_dir())
}

/// Temporary files are private by default; a result has the permissions of any new file.
fn readable_by_others() -> Builder<'static, 'static> {
    let mut builder = Builder::new();
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    builder
}

fn same_file(a: &Path, b: &Path) -> bool {
    whole(a) == whole(b)
}

/// A path without links and dots, of a file that need not exist yet.
fn whole(path: &Path) -> PathBuf {
    fs::canonicalize(path).unwrap_or_else(|_| {
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        let folder = fs::canonicalize(folder).unwrap_or_else(|_| folder.to_owned());
        folder.join(path.file_name().unwrap_or_default())
    })
}

fn to_stdout(bytes: &[u8]) -> Result<(), Failure> {
    let mut stdout = anstream::stdout().lock();
    stdout.write_all(bytes).and_then(|()| stdout.flush()).map_err(|error| unprinted(&error))
}

/// Standard output that does not take the result.
pub(super) fn unprinted(error: &std::io::Error) -> Failure {
    match error.kind() {
        ErrorKind::BrokenPipe => Failure::ReaderGone,
        _ => Failure::plain(format!("cannot write the result: {}", reason(error)), "check the disk or the pipe"),
    }
}
