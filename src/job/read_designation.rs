//! A bearing designation: sizes, class and closure, as far as open standards settle them.

use super::entry::AnyValue;
use super::section::{Notes, Section};
use crate::fit::RingClass;
use crate::stock::dimensions::{Designation, Suffix};

pub(super) fn designation(section: &Section<'_>, notes: &mut Notes) -> Option<Designation> {
    let wanted = "write a designation such as \"6206\", or give bore, outside and width";
    let words = section.words("designation", wanted, notes)?;
    match Designation::parse(words.text) {
        Ok(designation) => {
            let [bore, outside, width] =
                [designation.bore, designation.outside, designation.width].map(|size| size.mm());
            let value = AnyValue::Text(format!("series {}, {bore} x {outside} x {width} mm", designation.series));
            section.enter("designation", words.text, value, None, notes);
            for suffix in &designation.unknown {
                let why = "not a symbol of an open standard: it was not interpreted; state closure, class and material";
                notes.assume(format!("suffix {suffix}"), AnyValue::Text("no effect".into()), why);
            }
            Some(designation)
        }
        Err(error) => {
            let at = words.part(0..words.text.len());
            notes.advised(at, &section.path("designation"), &error.to_string(), wanted);
            None
        }
    }
}

/// Class of the rings that the designation names, else the ordinary one.
pub(super) fn designated_class(designation: Option<&Designation>) -> RingClass {
    let named = designation.and_then(|designation| {
        designation.suffixes.iter().find_map(|suffix| match suffix {
            Suffix::RingClass(class) => Some(*class),
            _ => None,
        })
    });
    named.unwrap_or(RingClass::Normal)
}

/// Closure that the designation names.
pub(super) fn designated_closure(designation: Option<&Designation>) -> Option<&'static str> {
    designation?.suffixes.iter().find_map(|suffix| match suffix {
        Suffix::Seals { .. } => Some("elastomer seals"),
        Suffix::Shields { .. } => Some("shields"),
        Suffix::InternalClearance(_) | Suffix::RingClass(_) => None,
    })
}
