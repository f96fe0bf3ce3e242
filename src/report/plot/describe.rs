//! The picture in words, for those who do not see it.

use super::PlotRequest;
use super::units::{TimeUnit, length_text, moment_time, seconds};
use crate::plan::clearance_history::{ClearancePoint, Moment, MomentKind};

/// What the picture shows, in sentences. The history has been checked.
pub(super) fn describe(request: &PlotRequest) -> String {
    let mut sentences = vec![format!("{} Clearance against time.", request.subtitle).trim().to_owned()];
    let history = request.history;
    if let Some(first) = history.points.first() {
        sentences.push(format!("At the start: {}.", cases(request, first)));
    }
    let mut moments: Vec<&Moment> = history.moments.iter().collect();
    moments.sort_by(|a, b| seconds(a.time).total_cmp(&seconds(b.time)));
    sentences.extend(moments.into_iter().map(|moment| moment_sentence(request, moment)));
    if let Some(last) = history.points.last() {
        sentences.push(format!("At the end: {}.", cases(request, last)));
    }
    sentences.extend(history.in_seat.moments.iter().map(|moment| moment_sentence(request, moment)));
    if let Some(last) = history.in_seat.points.last() {
        sentences.push(format!("In the seat, at the end: {}.", cases(request, last)));
    }
    sentences.push(format!("Placing clearance: {}.", length_text(history.placing_clearance, request.system)));
    sentences.join(" ")
}

fn cases(request: &PlotRequest, point: &ClearancePoint) -> String {
    let text = point.clearance.map(|length| length_text(length, request.system));
    format!("tightest {}, middle {}, loosest {}", text.tightest, text.middle, text.loosest)
}

fn moment_sentence(request: &PlotRequest, moment: &Moment) -> String {
    let time = seconds(moment.time);
    let (side, counted) = if time < 0.0 { ("before", -time) } else { ("after", time) };
    let when = moment_time(counted, TimeUnit::for_span(counted), moment.kind);
    let what = match moment.kind {
        MomentKind::OutOfMedium => "Out of the medium".to_owned(),
        MomentKind::AtBore => format!("At the bore {when} {side} leaving the medium"),
        MomentKind::FirstClears => format!("The tightest case clears from {when} {side} leaving the medium"),
        MomentKind::NoLongerClears => format!("The tightest case clears until {when} {side} leaving the medium"),
        MomentKind::Grips => return format!("In the seat the tightest case grips after {when}."),
    };
    format!("{what}: middle {}.", length_text(moment.clearance, request.system))
}
