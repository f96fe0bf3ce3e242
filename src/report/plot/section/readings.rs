//! The numbers of a section in the units of its picture, and the words beside it.

use super::{SectionPicture, Shown};
use crate::plan::drawing::SectionPlan;
use crate::quantity::{Length, Pressure, System, Toward, show_pressure, show_small_length};
use crate::report::section as words;
use crate::section::{Node, StressAt};
use uom::si::length::{inch, micrometer, mil, millimeter};
use uom::si::pressure::{megapascal, psi};

pub(super) fn length(length: Length, system: System) -> f64 {
    match system {
        System::Metric => length.get::<millimeter>(),
        System::Inch => length.get::<inch>(),
    }
}

pub(super) fn length_unit(system: System) -> &'static str {
    if system == System::Metric { "mm" } else { "in" }
}

pub(super) fn pressure(pressure: Pressure, system: System) -> f64 {
    match system {
        System::Metric => pressure.get::<megapascal>(),
        System::Inch => pressure.get::<psi>(),
    }
}

pub(super) fn pressure_unit(system: System) -> &'static str {
    if system == System::Metric { "MPa" } else { "psi" }
}

impl Shown {
    /// The shown quantity at a node, in the unit of the key.
    pub(super) fn of(self, node: &Node, system: System) -> f64 {
        match self {
            Self::VonMises => pressure(node.stress.von_mises(), system),
            Self::Hoop => pressure(node.stress.hoop, system),
            Self::RadialDisplacement => match system {
                System::Metric => node.radial.get::<micrometer>(),
                System::Inch => node.radial.get::<mil>(),
            },
        }
    }

    /// What the quantity is above nothing and below it; none where it has no sign.
    pub(super) fn sides(self) -> Option<[&'static str; 2]> {
        match self {
            Self::VonMises => None,
            Self::Hoop => Some(["tension", "compression"]),
            Self::RadialDisplacement => Some(["outward", "inward"]),
        }
    }

    /// Name and unit, a line each.
    pub(super) fn name(self, system: System) -> [String; 2] {
        let stress = pressure_unit(system);
        match self {
            Self::VonMises => ["von Mises".to_owned(), format!("stress, {stress}")],
            Self::Hoop => ["hoop stress,".to_owned(), stress.to_owned()],
            Self::RadialDisplacement if system == System::Metric => ["moved".to_owned(), "outward, µm".to_owned()],
            Self::RadialDisplacement => ["moved".to_owned(), "outward, thou".to_owned()],
        }
    }
}

/// The largest of the shown stress, with the number of the part that bears it; none for displacements or without stress.
pub(super) fn largest(seat: &SectionPlan, show: Shown) -> Option<(usize, StressAt)> {
    let of = |peak: &crate::section::Peak| match show {
        Shown::VonMises => Some(peak.von_mises),
        Shown::Hoop => Some(peak.hoop),
        Shown::RadialDisplacement => None,
    };
    let peaks = seat.peaks.iter().enumerate().filter_map(|(part, peak)| Some((part, of(peak)?)));
    let most = peaks.max_by(|a, b| a.1.stress.value.total_cmp(&b.1.stress.value));
    most.filter(|(_, at)| at.stress > Pressure::default())
}

pub(super) fn title(request: &SectionPicture) -> String {
    words::title(request.seat, request.system)
}

/// What a reader who cannot see the picture is told.
pub(super) fn description(request: &SectionPicture) -> String {
    let seat = request.seat;
    let mut text = format!("{}. {}.", request.title, words::readings(seat, request.system));
    if let Some((part, at)) = largest(seat, request.show) {
        let stress = show_pressure(at.stress, request.system, Toward::Nearest);
        let what = if request.show == Shown::Hoop { "hoop stress" } else { "von Mises stress" };
        text.push_str(&format!(" Largest {what} {stress}, in the {}.", seat.parts[part]));
    }
    if let Some(closing) = seat.closing {
        let show = |length| show_small_length(length, request.system, Toward::Nearest);
        let places = (show(closing.front), show(closing.middle), show(closing.back));
        text.push_str(&format!(
            " The {} changes by {} at the front, {} in the middle and {} at the back.",
            seat.ring, places.0, places.1, places.2
        ));
    }
    format!("{text} {}", words::unread(seat, request.system))
}
