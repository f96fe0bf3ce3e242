//! What stands along the axis.

use super::paragraph::Page;
use super::show::Show;
use super::table::Table;
use crate::assembly::stack::Way;
use crate::plan::stack::{BedPlan, Closes, PairPlan, StackPlan};
use crate::quantity::{Length, Ratio, System, Toward, show_share};
use uom::si::ratio::ratio;

/// Whether the ring goes in, and what to do.
pub(super) fn answer(stack: &StackPlan, system: System, page: &mut Page) {
    if let Some(bed) = &stack.bed {
        page.steps(&format!("What to do, axial stack: {}", in_words(bed)), &bed.steps, system);
    }
    if let Some(pair) = &stack.pair {
        page.steps("What to do, bearings and spacer", &pair.steps, system);
    }
}

pub(super) fn details(stack: &StackPlan, system: System, page: &mut Page) {
    let show = Show { system };
    if let Some(bed) = &stack.bed {
        details_of_bed(bed, show, page);
    }
    if let Some(pair) = &stack.pair {
        details_of_pair(pair, show, page);
    }
}

fn details_of_bed(bed: &BedPlan, show: Show, page: &mut Page) {
    page.heading(&format!("Axial stack, {}: {}", bed.ring, in_words(bed)));
    page.table(&dimensions(bed, show));
    page.line("");
    page.table(&plays(bed, show));
    page.small(
        "root of the summed squares: 997 of 1000, sizes normally distributed about the middle; scatter: 98 of 100, every size within \
         its limits as likely as any other",
    );
    page.paragraph(&shares(bed));
    page.paragraph(&groove(bed, show));
}

/// Whether the ring goes in, in words.
fn in_words(bed: &BedPlan) -> &'static str {
    match bed.closes {
        Closes::Always => "the ring goes into its groove in every case",
        Closes::Sometimes => "the ring does not go into its groove in every case",
        Closes::Never => "the ring cannot go into its groove",
    }
}

fn dimensions(bed: &BedPlan, show: Show) -> Table<4> {
    let rows = bed.rows.iter().map(|row| {
        let way = if row.way == Way::Opens { "+" } else { "-" };
        [format!("{way} {}", row.what), show.size(row.least), show.size(row.most), row.basis.clone()]
    });
    Table { head: Some(["", "least", "most", ""].map(str::to_owned)), rows: rows.collect() }
}

fn plays(bed: &BedPlan, show: Show) -> Table<4> {
    let size = |length: Length| show.size(length);
    let middle = size(bed.play.middle);
    let named = |name: &str, least: Length, most: Length| [name.to_owned(), size(least), middle.clone(), size(most)];
    let rows = vec![
        named("play left, worst cases", bed.play.least, bed.play.most),
        named("play left, root of the summed squares", bed.usual_play.least, bed.usual_play.most),
        named("play left, scatter", bed.scatter.0, bed.scatter.1),
    ];
    Table { head: Some(["", "least", "middle", "most"].map(str::to_owned)), rows }
}

/// How many assemblies are not as wanted.
fn shares(bed: &BedPlan) -> String {
    let share = |share: f64| show_share(Ratio::new::<ratio>(share), Toward::Up);
    let short = if bed.share_short > 0.0 {
        format!("{} of these have less play than is wanted", share(bed.share_short))
    } else {
        "None of these has less play than is wanted".to_owned()
    };
    match bed.share_long {
        Some(long) if long > 0.0 => format!("{short}; {} have more.", share(long)),
        Some(_) => format!("{short}, and none has more."),
        None => format!("{short}; more is not limited."),
    }
}

fn groove(bed: &BedPlan, show: Show) -> String {
    let mut text =
        format!("The groove is wider than the ring by {} to {}.", show.size(bed.slack.0), show.size(bed.slack.1));
    if let Some((land, wanted)) = bed.land {
        text.push_str(&format!(
            " Land between groove and face: {}, of at least {} wanted.",
            show.size(land),
            show.size(wanted)
        ));
    }
    let widest = &bed.rows[bed.widest];
    text.push_str(&format!(" The widest limits are those of the {}: {} apart.", widest.what, show.size(bed.widest_by)));
    text
}

fn details_of_pair(pair: &PairPlan, show: Show, page: &mut Page) {
    page.heading("Two bearings and their spacer");
    let ends = |name: &str, least: Length, most: Length| [name.to_owned(), show.size(least), show.size(most)];
    let mut rows = vec![
        ends("spacer", pair.spacer.0, pair.spacer.1),
        ends("distance of the shoulders", pair.shoulders.0, pair.shoulders.1),
        ends("spacer less shoulders (+: spacer too long)", pair.difference.least, pair.difference.most),
    ];
    if let Some((least, most)) = pair.axial_play {
        rows.push(ends("axial play of a bearing as fitted, about", least, most));
    }
    page.table(&Table { head: Some(["", "least", "most"].map(str::to_owned)), rows });
}
