use super::spelling::{mixed, number, tidy, without_class};
use super::{Series, Thread, threads};
use crate::stock::iso286::TableError;
use thiserror::Error;
use uom::si::length::{inch, millimeter};

/// Sizes that are the same when written with three or four decimals, in and mm.
const SIZE_ROUNDING: f64 = 6e-4;
/// Smallest number that is written without `#` and still means a screw number; 1 and 2 are inches.
const FIRST_NUMBER: f64 = 4.0;

/// Why a thread cannot be looked up.
#[derive(Clone, Debug, Error)]
pub enum ThreadError {
    /// No row of the tables has this size and pitch, or the text is not a designation.
    #[error(
        "no thread `{given}` is known here\n  help: {}write M10, M10x1.25, 1/2-13, 3/8-24 UNF or #10-32; known are M3 to \
         M48 and No. 4 to 2 in",
        did_you_mean(nearest)
    )]
    Unknown {
        /// What was given.
        given: String,
        /// Known designations nearest to it, nearest first.
        nearest: Vec<String>,
    },
    /// An embedded table is malformed.
    #[error(transparent)]
    Table(#[from] TableError),
}

fn did_you_mean(nearest: &[String]) -> String {
    if nearest.is_empty() { String::new() } else { format!("the nearest known are {}; ", nearest.join(", ")) }
}

/// What a text says, in the unit of its system: mm and mm of pitch, or inch and inch of pitch.
#[derive(Clone, Copy, Debug)]
struct Wanted {
    metric: bool,
    nominal: f64,
    pitch: Option<f64>,
    series: Option<Series>,
}

impl Thread {
    /// Reads a designation such as `M10`, `M10x1.25`, `M10 × 1`, `1/2-13`, `1/2-13 UNC`, `1-1/8-7`, `#10-32` or `10-32`.
    ///
    /// A metric size without a pitch has the coarse one. Capitals or not, decimal point or comma; a unified size may be
    /// a decimal, and may have its series in place of the threads per inch (`1/2 UNC`). A tolerance class at the end (`M10-6g`,
    /// `1/2-13 UNC-2A`) is passed over: it does not change what a screw bears.
    ///
    /// # Errors
    /// [`ThreadError::Unknown`] with the nearest that are known.
    ///
    /// **Source**: ISO 965-1 and ASME B1.1 for the way threads are written, from memory.
    ///
    /// # Examples
    /// ```
    /// use seatwise::stock::threads::Thread;
    /// let thread = Thread::parse("m10 x 1,25")?;
    /// assert_eq!(thread.designation, "M10×1.25");
    /// assert!(Thread::parse("M11").unwrap_err().to_string().contains("M10, M12"));
    /// # Ok::<(), seatwise::stock::threads::ThreadError>(())
    /// ```
    pub fn parse(given: &str) -> Result<Self, ThreadError> {
        let all = threads()?;
        let text = tidy(given);
        let bare = without_class(&text);
        let wanted = metric(bare).or_else(|| unified(bare));
        let found = wanted.and_then(|wanted| all.iter().find(|thread| wanted.is(thread)));
        found.cloned().ok_or_else(|| {
            let nearest = match wanted {
                Some(wanted) => by_size(&wanted, all),
                None => by_spelling(&text, all),
            };
            ThreadError::Unknown { given: given.trim().to_owned(), nearest }
        })
    }
}

impl Wanted {
    fn is(&self, thread: &Thread) -> bool {
        let (size, pitch) = self.off(thread);
        // Threads per inch are exact, so a thousandth of the pitch tells 13 from 12.99 and forgives 1/13 written out.
        let pitch_fits = match self.pitch {
            Some(wanted) => pitch <= 1e-3 * wanted,
            None => self.series.is_some() || thread.series == Series::MetricCoarse,
        };
        self.metric == thread.series.is_metric() && size <= SIZE_ROUNDING && pitch_fits && self.in_series(thread)
    }

    fn in_series(&self, thread: &Thread) -> bool {
        self.series.is_none_or(|series| series == thread.series)
    }

    /// How far a thread's nominal size and pitch are from these.
    fn off(&self, thread: &Thread) -> (f64, f64) {
        let (nominal, pitch) = if self.metric {
            (thread.nominal.get::<millimeter>(), thread.pitch.get::<millimeter>())
        } else {
            (thread.nominal.get::<inch>(), thread.pitch.get::<inch>())
        };
        ((nominal - self.nominal).abs(), self.pitch.map_or(0.0, |wanted| (pitch - wanted).abs()))
    }
}

fn metric(text: &str) -> Option<Wanted> {
    let rest = text.strip_prefix('M')?.trim_start();
    let (size, pitch) = match rest.split_once(['X', '-']) {
        Some((size, pitch)) => (size, Some(number(pitch)?)),
        None => (rest, None),
    };
    Some(Wanted { metric: true, nominal: number(size)?, pitch, series: None })
}

fn unified(text: &str) -> Option<Wanted> {
    let (text, series) = take_series(text);
    let parted = text.rsplit_once('-').and_then(|(size, count)| Some((size, mixed(count)?)));
    // `1-1/8 UNC` has no count of threads: what follows the dash is part of the size.
    let (size, count) = match parted {
        Some((size, count)) if count >= 1.0 => (size, Some(count)),
        _ => (text, None),
    };
    if count.is_none() && series.is_none() {
        return None;
    }
    Some(Wanted { metric: false, nominal: inch_size(size)?, pitch: count.map(f64::recip), series })
}

fn take_series(text: &str) -> (&str, Option<Series>) {
    // None of the three begins or ends with another.
    for (name, series) in
        [("UNC", Series::UnifiedCoarse), ("UNF", Series::UnifiedFine), ("UNEF", Series::UnifiedExtraFine)]
    {
        if let Some(rest) = text.strip_suffix(name).or_else(|| text.strip_prefix(name)) {
            return (rest.trim().trim_end_matches('-'), Some(series));
        }
    }
    (text, None)
}

/// Inches of `1/2`, `1-1/8`, `1 1/8`, `.500`, `#10` or `10`: screw numbers are 0.060 in and 0.013 in for each number.
fn inch_size(size: &str) -> Option<f64> {
    let bare = size.trim().trim_end_matches("IN").trim_end();
    let (size, is_number) = match bare.strip_prefix('#') {
        Some(screw_number) => (number(screw_number)?, true),
        None => (mixed(bare)?, false),
    };
    let is_whole = bare.bytes().all(|byte| byte.is_ascii_digit());
    Some(if is_number || (is_whole && size >= FIRST_NUMBER) { 0.060 + 0.013 * size } else { size })
}

/// The three threads of the same system nearest in size, then in pitch; of the series that was named, if any.
fn by_size(wanted: &Wanted, all: &[Thread]) -> Vec<String> {
    let kin = |thread: &&Thread| thread.series.is_metric() == wanted.metric && wanted.in_series(thread);
    let coarse = |thread: &&Thread| wanted.pitch.is_some() || wanted.series.is_some() || is_coarse(thread);
    let mut near: Vec<&Thread> = all.iter().filter(kin).filter(coarse).collect();
    near.sort_by(|a, b| {
        let (a, b) = (wanted.off(a), wanted.off(b));
        a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1))
    });
    near.iter().take(3).map(|thread| thread.designation.clone()).collect()
}

fn is_coarse(thread: &Thread) -> bool {
    matches!(thread.series, Series::MetricCoarse | Series::UnifiedCoarse)
}

/// Threads whose designation is at most two slips of the pen away, nearest first.
fn by_spelling(text: &str, all: &[Thread]) -> Vec<String> {
    let slips = |thread: &Thread| strsim::osa_distance(text, &tidy(&thread.designation));
    let mut near: Vec<(usize, &Thread)> = all.iter().map(|thread| (slips(thread), thread)).collect();
    near.retain(|(slips, _)| *slips <= 2 && text.len() > 2);
    near.sort_by_key(|(slips, _)| *slips);
    near.iter().take(3).map(|(_, thread)| thread.designation.clone()).collect()
}
