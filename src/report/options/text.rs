use super::soaks;
use crate::job::{AnyValue, Job};
use crate::plan::options::{Aim, DRAWN_PARTS, Odds, RULE, SeatWays, Used, Way, Worked};
use crate::plan::{Caution, Level, Soak, Verdict};
use crate::quantity::{Length, System, Time, Toward, show_duration, show_force, show_size, show_temperature};
use crate::report::Layout;
use crate::report::scatter::per_cent;
use crate::report::text::{Page, Table};
use crate::report::words;

/// Ways that are shown unless all are asked for.
const SHOWN: usize = 8;

/// The ways as text; all of them, or the best and how many more there are.
pub fn text(job: &Job, seats: &[SeatWays], layout: impl Into<Layout>, all: bool) -> String {
    let Layout { system, columns } = layout.into();
    let mut page = Page::new(columns);
    if !job.heading.title.is_empty() {
        page.flush(&job.heading.title);
    }
    for seat in seats {
        of_seat(seat, system, all, &mut page);
    }
    if seats.len() > 1 {
        page.heading("Two seats");
        page.paragraph("Each seat is looked at by itself: fit one, let it come to one temperature, then the other.");
    }
    cautions(seats, system, all, &mut page);
    page.heading("The order");
    page.paragraph(RULE);
    page.paragraph(&format!(
        "Clearance, times and force are those of {}. Settings go by 5 degrees Celsius, holds by what is set on a clock. The \
         comfortable times are common practice, without a published source.",
        counted(seats)
    ));
    page.finish()
}

/// The ways that can be done in a line each, best first, for the legend of a picture.
pub fn legend(seat: &SeatWays, system: System) -> Vec<String> {
    let line = |(number, way, worked): (usize, &Way, &Worked)| {
        let treated: Vec<String> = soaks(way, worked)
            .map(|(used, soak)| {
                let end = show_temperature(soak.end, system, 0, Toward::Nearest);
                format!("{} to {end} in {}", used.medium.id(), show_duration(soak.hold, Toward::Up))
            })
            .collect();
        let treated = if treated.is_empty() { way.words().to_owned() } else { treated.join(", ") };
        let clearance = words::small_length(worked.seat.at_bore.clearance.tightest, system, Toward::Down);
        format!("{number}  {treated}: {clearance}, {}", ends_in(worked))
    };
    shown(seat, true).map(line).collect()
}

/// The title of the picture: what it shows, and which way is the best.
pub fn picture_title(seat: &SeatWays, system: System) -> String {
    let into = match seat.seat {
        crate::plan::SeatKind::Housing => format!("the {} into the housing", seat.job.part.kind.noun()),
        crate::plan::SeatKind::Shaft => format!("the {} onto the shaft", seat.job.part.kind.noun()),
    };
    match shown(seat, false).next() {
        Some((_, way, worked)) => {
            let clearance = words::small_length(worked.seat.at_bore.clearance.tightest, system, Toward::Down);
            format!("Ways to get {into}; best: {}, {clearance}, {}", short(way, worked), ends_in(worked))
        }
        None => format!("No way gets {into}"),
    }
}

/// Whose numbers the list gives.
fn counted(seats: &[SeatWays]) -> String {
    match seats.first().map(|seat| seat.aim) {
        Some(Aim::Share { share, seed }) => format!(
            "the part that stands for the share: {} % of {DRAWN_PARTS} parts drawn with seed {seed} are at least as loose. Their \
             sizes scatter as [scatter] says; temperatures, films and times stay at the ends that leave the least in hand, and \
             `seatwise plan --draws` of the chosen way scatters them too",
            per_cent(share.value)
        ),
        Some(Aim::TightestCase) | None => "the tightest case".to_owned(),
    }
}

fn shown(seat: &SeatWays, all: bool) -> impl Iterator<Item = (usize, &Way, &Worked)> {
    let worked = seat.ways.iter().enumerate().filter_map(|(i, way)| way.worked().map(|worked| (i + 1, way, worked)));
    worked.take(if all { usize::MAX } else { SHOWN })
}

fn of_seat(seat: &SeatWays, system: System, all: bool, page: &mut Page) {
    let nominal = show_size(seat.job.part.outside, system, Toward::Nearest);
    let name = seat.seat.name();
    let nominal = match seat.seat {
        crate::plan::SeatKind::Housing => nominal,
        crate::plan::SeatKind::Shaft => show_size(seat.job.part.bore.unwrap_or_default(), system, Toward::Nearest),
    };
    page.heading(&format!("Ways for the {name} seat, nominal {nominal}, best first"));
    let rows: Vec<[String; 7]> =
        shown(seat, all).map(|(number, way, worked)| row(number, way, worked, system)).collect();
    if rows.is_empty() {
        page.paragraph("None of them can be done; the reasons stand below.");
    } else {
        let head = ["", "way", "ready after", "clearance", "in hand", "free in seat", "force"].map(str::to_owned);
        page.table(&Table { head: Some(head), rows });
        page.line("");
    }
    for (number, way, worked) in shown(seat, all) {
        page.hanging(&format!("{number}. "), &details(&seat.job, way, worked, system));
    }
    more(seat, all, page);
    refused(seat, system, page);
}

fn row(number: usize, way: &Way, worked: &Worked, system: System) -> [String; 7] {
    let drops = worked.seat.verdict == Verdict::DropsIn;
    let treated = worked.seat.chill.is_some() || worked.seat.warm.is_some();
    let time = |time: Option<Time>| time.map_or("no end".to_owned(), |time| show_duration(time, Toward::Down));
    let clearance = worked.seat.at_bore.clearance.tightest;
    let force = show_force(worked.seat.at_bore.force.tightest, system, Toward::Up);
    [
        number.to_string(),
        short(way, worked),
        if treated { show_duration(worked.ready_after(), Toward::Up) } else { "at once".to_owned() },
        words::small_length(clearance, system, Toward::Down),
        if drops { time(worked.in_hand) } else { "-".to_owned() },
        if drops { time(worked.in_seat()) } else { "-".to_owned() },
        if clearance >= Length::default() { "none".to_owned() } else { format!("up to {force}") },
    ]
}

/// The media, and the press where it is needed.
fn short(way: &Way, worked: &Worked) -> String {
    let mut words: Vec<&str> = way.used().map(|used| used.medium.id()).collect();
    if words.is_empty() || worked.seat.verdict != Verdict::DropsIn {
        words.push(if words.is_empty() { way.words() } else { "press" });
    }
    words.join(" + ")
}

fn details(job: &Job, way: &Way, worked: &Worked, system: System) -> String {
    let treated: Vec<String> = soaks(way, worked).map(|(used, soak)| treated(job, used, soak, system)).collect();
    let none = "nothing is chilled or warmed".to_owned();
    let mut parts = vec![if treated.is_empty() { none } else { treated.join("; ") }];
    parts.push(outcome(worked));
    parts.extend(worked.odds.map(|odds| of_all(&odds, system)));
    if worked.chilling_shortens() {
        parts.push(
            "CHILLING MAKES IT WORSE: the cold part draws the warm one down and grips sooner; leave the chill out"
                .to_owned(),
        );
    }
    if job.press.capacity.is_none() && worked.seat.verdict != Verdict::DropsIn {
        parts.push("The force of the press is not stated, so it is not known to be enough".to_owned());
    }
    let words = way.words();
    let gravest = worked.hazard(way).map_or_else(
        || "No caution beyond ordinary care".to_owned(),
        |level| format!("Gravest caution: {}", level.word().to_uppercase()),
    );
    format!("{}: {}. {gravest}.", words.to_uppercase(), parts.join(". "))
}

/// What becomes of all parts.
fn of_all(odds: &Odds, system: System) -> String {
    let share = &odds.drops_in;
    let (low, high) = (per_cent(share.low), per_cent(share.high));
    let clearance = words::small_length(odds.tightest, system, Toward::Down);
    let force = show_force(odds.force, system, Toward::Up);
    let tightest = if odds.tightest >= Length::default() {
        format!("the tightest case has {clearance}")
    } else {
        format!("the tightest case has {clearance} and needs up to {force}")
    };
    format!("Of all parts {} % drop in ({low} to {high} % with 95 % confidence); {tightest}", per_cent(share.share()))
}

fn treated(job: &Job, used: &Used, soak: &Soak, system: System) -> String {
    let chills = soak.end < job.bench.temperature;
    let toward = if chills { Toward::Down } else { Toward::Up };
    let (name, medium) = (words::piece(job, used.piece), used.medium.id());
    let mut text = match used.setting {
        Some(setting) if soak.time_constant.is_none() => {
            format!("the {name} in {medium} until {}", show_temperature(setting, system, 0, toward))
        }
        _ => format!("the {name} in {medium} at {}", show_temperature(soak.medium_temperature, system, 0, toward)),
    };
    let hold = show_duration(soak.hold, Toward::Up);
    let end = show_temperature(soak.end, system, 0, Toward::Nearest);
    text.push_str(&format!(" for {hold}, out at {end}"));
    if let Some(least) = used.least_setting {
        text.push_str(&format!(" (from {} it would just clear)", show_temperature(least, system, 0, Toward::Up)));
    }
    if let Some(coolant) = soak.coolant {
        let mass = words::value(&AnyValue::Mass(coolant.mass), system);
        text.push_str(&format!(", which turns {mass} of it to gas; count on three times as much"));
    }
    text
}

/// The same in two words.
fn ends_in(worked: &Worked) -> &'static str {
    match worked.seat.verdict {
        Verdict::DropsIn if worked.is_comfortable() => "time enough",
        Verdict::DropsIn => "a race",
        Verdict::SomeWillNot | Verdict::Press => "press",
        Verdict::DoNot => "do not",
    }
}

fn outcome(worked: &Worked) -> String {
    match worked.seat.verdict {
        Verdict::DropsIn if worked.is_comfortable() => "Drops in, time enough",
        Verdict::DropsIn => "Drops in, but it is a RACE",
        Verdict::SomeWillNot => "Most drop in, some need the press",
        Verdict::Press if worked.seat.at_bore.clearance.tightest >= Length::default() => "Goes with a light push",
        Verdict::Press => "Has to be pressed",
        Verdict::DoNot => "Do not",
    }
    .to_owned()
}

fn more(seat: &SeatWays, all: bool, page: &mut Page) {
    let worked = seat.ways.iter().filter(|way| way.worked().is_some()).count();
    let hidden = worked.saturating_sub(shown(seat, all).count());
    if hidden > 0 {
        page.paragraph(&format!("{hidden} more ways can be done and rank lower; --all shows them."));
    }
    if seat.left_out > 0 {
        page.paragraph(&format!(
            "{} pairs of media were not tried: one of the two alone does it with time enough, and the other adds a danger.",
            seat.left_out
        ));
    }
}

fn refused(seat: &SeatWays, system: System, page: &mut Page) {
    let mut reasons: Vec<(String, Vec<String>)> = Vec::new();
    for (way, reason) in seat.ways.iter().filter_map(|way| way.reason().map(|reason| (way, reason))) {
        let media: Vec<&str> = way.used().map(|used| used.medium.id()).collect();
        let name = if media.is_empty() { way.words().to_owned() } else { media.join(" with ") };
        let reason = words::sentence(reason, system);
        match reasons.iter_mut().find(|(known, _)| *known == reason) {
            Some((_, ways)) => ways.push(name),
            None => reasons.push((reason, vec![name])),
        }
    }
    if reasons.is_empty() {
        return;
    }
    page.heading(&format!("Not for the {} seat", seat.seat.name()));
    for (reason, ways) in reasons {
        page.hanging(&format!("{}: ", ways.join("; ")), &reason);
    }
}

/// The grave cautions of every way that is shown, each once, with the numbers of the ways.
fn cautions(seats: &[SeatWays], system: System, all: bool, page: &mut Page) {
    let mut found: Vec<(&Caution, String, Vec<String>)> = Vec::new();
    for seat in seats {
        for (number, _, worked) in shown(seat, all) {
            let which = if seats.len() > 1 { format!("{} {number}", seat.seat.name()) } else { number.to_string() };
            for caution in worked.cautions.iter().filter(|caution| belongs(caution)) {
                let text = words::sentence(caution.sentence(), system);
                match found.iter_mut().find(|(_, known, _)| *known == text) {
                    Some((_, _, ways)) => ways.push(which.clone()),
                    None => found.push((caution, text, vec![which.clone()])),
                }
            }
        }
    }
    if found.is_empty() {
        return;
    }
    let all_ways: usize = seats.iter().map(|seat| shown(seat, all).count()).sum();
    found.sort_by_key(|(caution, ..)| caution.rank());
    page.heading("Cautions; `seatwise plan` of the way that is chosen gives all of them");
    for (caution, text, ways) in found {
        let ways = match ways.as_slice() {
            [way] => format!("way {way}"),
            some if some.len() == all_ways => "all ways".to_owned(),
            some => format!("ways {}", some.join(", ")),
        };
        page.hanging(&format!("{} ({ways}): ", caution.signal().to_uppercase()), &text);
    }
}

/// What can hurt someone, and whose word goes first; the rest belongs to the plan of one way.
fn belongs(caution: &Caution) -> bool {
    let of_the_way = ["chilling-shortens", "does-not-clear-middle", "does-not-clear-tightest", "press-too-small"];
    (caution.level() <= Level::Warning && !of_the_way.contains(&caution.code())) || caution.code() == "defer"
}
