//! Puts each caution to the step where it applies.

use super::{Stage, StepKind, Work};
use crate::plan::caution::{Caution, Level};
use crate::plan::sentence::Word;

/// Families of codes by how they begin, and the step at which they apply; the first that fits, and whose step there is, counts.
const FAMILIES: [(&str, StepKind); 55] = [
    ("hot-", StepKind::Warm),
    ("too-hot", StepKind::Warm),
    ("steam", StepKind::Warm),
    ("induction-", StepKind::Warm),
    ("cold-part", StepKind::Chill),
    ("cryogen", StepKind::Chill),
    ("dry-ice", StepKind::Chill),
    ("flammable-", StepKind::Chill),
    ("asphyxiation", StepKind::Chill),
    ("gas-in-the-room", StepKind::Chill),
    ("too-cold", StepKind::Chill),
    ("frost", StepKind::Chill),
    ("not-one-temperature", StepKind::Prepare),
    ("uneven-heat", StepKind::Prepare),
    ("cannot-decide", StepKind::Prepare),
    ("few-directions", StepKind::Prepare),
    ("seat-out-of-round", StepKind::Prepare),
    ("seat-tapered", StepKind::Prepare),
    ("short-lead-in", StepKind::Prepare),
    ("loose-in-part", StepKind::Prepare),
    ("loose-fit", StepKind::Prepare),
    ("shaft-runs-out", StepKind::Prepare),
    ("replace-bearing", StepKind::Check),
    ("lip-track", StepKind::Check),
    ("short-window", StepKind::Place),
    ("would-clear", StepKind::Place),
    ("chilling-shortens", StepKind::Place),
    ("grips-soon", StepKind::Push),
    ("push-right-ring", StepKind::Push),
    ("press-seal", StepKind::SealPress),
    ("press", StepKind::Push),
    ("hammer", StepKind::Push),
    ("stops-half-way", StepKind::Push),
    ("weak-", StepKind::Push),
    ("hold-until-lock", StepKind::Push),
    ("elastic-limit-near", StepKind::Push),
    ("elastic-limit-passed", StepKind::Push),
    ("bush-takes-set", StepKind::Finish),
    ("shaft-takes-set", StepKind::Push),
    ("rings-differ", StepKind::Push),
    ("thin-side", StepKind::Push),
    ("uneven-wall", StepKind::Warm),
    ("uneven-wall", StepKind::Push),
    ("seal-force", StepKind::SealPress),
    ("liner-overload", StepKind::Push),
    ("liner-limit-near", StepKind::Push),
    ("seal-", StepKind::Seal),
    ("stack-", StepKind::Stack),
    ("retaining-ring", StepKind::Ring),
    ("ring-in-groove", StepKind::Stack),
    ("groove-land", StepKind::Stack),
    ("spacer-length", StepKind::Stack),
    ("torque-", StepKind::Screws),
    ("threads-", StepKind::Screws),
    ("engagement-", StepKind::Screws),
];

/// A note that is of use only at its step.
const NOTE_AT_ITS_STEP: &str = "stops-half-way";

/// The stages with their cautions, and the cautions that belong to none of their steps.
pub(super) fn cautions(cautions: &[Caution], stages: Vec<Stage>) -> Work {
    let mut work = Work { before: Vec::new(), stages, notes: Vec::new() };
    for (number, caution) in cautions.iter().enumerate() {
        if caution.level() == Level::Note && caution.code() != NOTE_AT_ITS_STEP {
            work.notes.push(number);
            continue;
        }
        let list = match place(caution, &work.stages) {
            Some((stage, step)) => &mut work.stages[stage].steps[step].cautions,
            None if caution.level() == Level::Note => &mut work.notes,
            None => &mut work.before,
        };
        list.push(number);
    }
    work
}

/// Stage and step of a caution: of the seat that it names, or else the first of its kind.
fn place(caution: &Caution, stages: &[Stage]) -> Option<(usize, usize)> {
    let of_seat = |stage: &Stage| stage.seat.is_none_or(|seat| !names_another(caution, seat.name()));
    let at = |kind: StepKind| {
        let found = |(number, stage): (usize, &Stage)| {
            let step = stage.steps.iter().position(|step| step.kind == kind)?;
            Some((number, step))
        };
        stages.iter().enumerate().filter(|(_, stage)| of_seat(stage)).find_map(found)
    };
    let fits = FAMILIES.iter().filter(|(family, _)| caution.code().starts_with(family));
    fits.map(|(_, kind)| *kind).find_map(at)
}

/// Whether a caution begins with the name of another seat.
fn names_another(caution: &Caution, seat: &str) -> bool {
    let opening = match caution.sentence().words.first() {
        Some(Word::Text(text)) => text.as_ref(),
        Some(Word::Value(..)) | None => "",
    };
    ["housing", "shaft"].iter().any(|name| *name != seat && opening.starts_with(&format!("{name} seat")))
}

#[cfg(test)]
mod tests {
    use super::{FAMILIES, cautions};
    use crate::plan::caution::{Caution, Level};
    use crate::plan::model::SeatKind;
    use crate::plan::sentence::say;
    use crate::plan::work::{Stage, StepKind, WorkStep};

    fn seat(seat: SeatKind, kinds: &[StepKind]) -> Stage {
        let steps = kinds.iter().map(|kind| WorkStep::new(*kind, say("Do it."))).collect();
        Stage { title: seat.name().to_owned(), seat: Some(seat), steps }
    }

    fn caution(code: &'static str, level: Level, text: &'static str) -> Caution {
        Caution::new(code, level, say(text), "common practice, no published source")
    }

    #[test]
    fn a_caution_stands_at_the_step_of_the_seat_that_it_names_and_none_is_lost() {
        let stages =
            vec![seat(SeatKind::Housing, &[StepKind::Push]), seat(SeatKind::Shaft, &[StepKind::Warm, StepKind::Push])];
        let found = [
            caution("hot-part", Level::Warning, "Hot metal looks like cold metal."),
            caution("push-right-ring", Level::Caution, "shaft seat: push on the inner ring."),
            caution("push-right-ring", Level::Caution, "housing seat: push on the outer ring."),
            caution("cryogen", Level::Danger, "It boils."),
            caution("stops-half-way", Level::Note, "shaft seat: if it stops"),
            caution("defer", Level::Note, "A calculation."),
        ];
        let work = cautions(&found, stages);
        assert_eq!(work.stages[0].steps[0].cautions, [2]);
        assert_eq!(work.stages[1].steps[0].cautions, [0]);
        assert_eq!(work.stages[1].steps[1].cautions, [1, 4]);
        assert_eq!((work.before, work.notes), (vec![3], vec![5]), "without a step: before the first, notes at the end");
    }

    /// What a liner does in service belongs to no step of the work, what it bears while the ring is pushed does, and a housing too
    /// hot for its liner to where it is warmed.
    #[test]
    fn what_a_liner_does_in_service_stands_before_the_work_and_what_it_bears_at_the_push() {
        let stages = vec![seat(SeatKind::Housing, &[StepKind::Warm, StepKind::Push])];
        let found = [
            caution("too-hot", Level::Danger, "The housing with its liner would reach 100 °C."),
            caution("liner-overload", Level::Danger, "The liner passes its strength."),
            caution("liner-comes-free", Level::Warning, "It comes free."),
            caution("liner-yields-in-service", Level::Warning, "The liner passes its strength in service."),
            caution("liner-limit-near", Level::Caution, "The liner comes close to its strength."),
            caution("liner", Level::Note, "The bore is that of a liner."),
        ];
        let work = cautions(&found, stages);
        assert_eq!(work.stages[0].steps[0].cautions, [0]);
        assert_eq!(work.stages[0].steps[1].cautions, [1, 4]);
        assert_eq!((work.before, work.notes), (vec![2, 3], vec![5]));
    }

    #[test]
    fn a_wall_that_is_thin_on_one_side_is_told_of_where_it_warms_else_where_it_is_pressed() {
        let uneven = || [caution("uneven-wall", Level::Caution, "housing seat: the wall runs from thin to thick.")];
        let warmed = cautions(&uneven(), vec![seat(SeatKind::Housing, &[StepKind::Push, StepKind::Warm])]);
        assert_eq!((warmed.stages[0].steps[0].cautions.len(), warmed.stages[0].steps[1].cautions.len()), (0, 1));
        let pressed = cautions(&uneven(), vec![seat(SeatKind::Housing, &[StepKind::Push])]);
        assert_eq!(pressed.stages[0].steps[0].cautions, [0]);
    }

    #[test]
    fn no_family_hides_another_with_a_different_step() {
        for (number, (longer, kind)) in FAMILIES.iter().enumerate() {
            let shorter = |family: &str| longer.starts_with(family) && family != *longer;
            let hidden = FAMILIES[..number].iter().find(|(family, other)| shorter(family) && other != kind);
            assert!(hidden.is_none(), "{longer} never counts");
        }
    }
}
