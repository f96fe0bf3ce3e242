//! The section of a seat as an input deck of CalculiX, an open-source solver for general purposes: the same mesh and material,
//! solved again by an independent code.
//!
//! Axisymmetric elements CAX8, contact of surfaces with a linear law of pressure over penetration. The interference is put
//! in as the sizes that both parts have before they are fitted: radii larger and smaller by a quarter of it at the seat, and in
//! proportion elsewhere, so that no wall changes by more than some 3e-4 and no solver's own way to count an overlap matters.
//! (With all of it in the wall of the ring, that is stiffer by 0.4 %, and pressures come out 0.2 % higher.) The law is so stiff
//! that the surfaces overlap by some 1e-7 of the diameter. Keywords and the order of nodes and faces follow the manual of
//! version 2.20, from memory, and are held by a test that runs it.

use crate::plan::drawing::SectionPlan;
use crate::quantity::Length;
use crate::section::{Node, PartField};
use uom::si::length::{micrometer, millimeter};
use uom::si::pressure::megapascal;

/// Pressure for a penetration of one, N/mm³: a pressure of 10 MPa overlaps by 1e-3 µm. From 1e6 to 1e8 the mean pressure of two
/// plain rings changes by less than 0.05 %.
const CONTACT_STIFFNESS: &str = "1e7";

/// The deck, in mm, N and MPa.
pub fn deck(title: &str, seat: &SectionPlan) -> String {
    let mut lines = Lines::default();
    lines.heading(title, seat);
    let first = first_numbers(seat);
    lines.line("*NODE, NSET=ALL");
    for (part, field) in seat.field.parts.iter().enumerate() {
        for (number, node) in field.nodes.iter().enumerate() {
            let radius = seat.unfitted_radius(part, node);
            lines.line(&format!("{}, {}, {}, 0.", first[part].0 + number, mm(radius), mm(node.place.position)));
        }
    }
    for (part, field) in seat.field.parts.iter().enumerate() {
        lines.part(sets(seat)[part], field, first[part]);
    }
    for contact in 0..seat.field.contacts.len() {
        if is_bonded(seat, contact) {
            lines.bond(seat, contact, &first);
        } else {
            lines.contact(seat, contact, &first);
        }
    }
    lines.supports(seat, &first);
    lines.step(seat, &first);
    lines.text
}

/// Number of the first node and of the first element of each part.
type First = (usize, usize);

fn first_numbers(seat: &SectionPlan) -> Vec<First> {
    let mut next = (1, 1);
    let first = |part: &PartField| {
        let own = next;
        next = (own.0 + part.nodes.len(), own.1 + part.elements.len());
        own
    };
    seat.field.parts.iter().map(first).collect()
}

/// Names of the sets of elements, from the inside outward.
fn sets(seat: &SectionPlan) -> &'static [&'static str] {
    if seat.seam.is_some() { &["INNER", "LINER", "OUTER"] } else { &["INNER", "OUTER"] }
}

/// A contact with the names of its two surfaces and of its law; the second is that of a liner and its housing.
const CONTACTS: [[&str; 3]; 2] = [["INNER_SEAT", "OUTER_SEAT", "SEAT"], ["LINER_SEAM", "HOUSING_SEAM", "SEAM"]];

fn mm(length: Length) -> String {
    let value = length.get::<millimeter>();
    format!("{:.9}", if value.abs() < 1e-12 { 0.0 } else { value })
}

#[derive(Default)]
struct Lines {
    text: String,
}

impl Lines {
    fn line(&mut self, line: &str) {
        self.text.push_str(line);
        self.text.push('\n');
    }

    /// What it is and what to compare.
    fn heading(&mut self, title: &str, seat: &SectionPlan) {
        self.line("** A section of a bearing seat for CalculiX (ccx); units mm, N, MPa");
        // A line break in a title would begin a line of the deck.
        let title: String = title.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
        self.line(&format!("** {title}"));
        let (moment, case) = (seat.moment.words(), seat.case.name());
        self.line(&format!("** {} seat, {moment}, {case} case", seat.seat.name()));
        self.line(&format!("** interference on the diameter: {:.4} um", seat.interference.get::<micrometer>()));
        self.line("** It is put in as the sizes before fitting: inner radii larger, outer radii smaller, by a quarter of it at the seat.");
        if let Some(seam) = &seat.seam {
            let [of_seam, bore] = [seam.interference, seam.bore.mean].map(|length| length.get::<micrometer>());
            let held = if seam.bonded { "bonded across, free to slide along the axis" } else { "pressed in" };
            self.line(&format!(
                "** liner, {held}: {of_seam:.4} um of interference with the housing before it is fitted;"
            ));
            self.line(&format!("**   that changes its bore by {bore:.4} um on the mean, and the bore is finished to its limits after it"));
        }
        let contact = &seat.state.contacts[0];
        let (diameter, length) = (contact.diameter.get::<millimeter>(), contact.length.get::<millimeter>());
        self.line("** What seatwise computes, to compare:");
        let pressure = contact.mean_pressure.get::<megapascal>();
        self.line(&format!("**   mean pressure {pressure:.4} MPa; here: total force x of the contact over"));
        self.line(&format!(
            "**     {diameter:.4} mm x {length:.4} mm x sin(1 deg), as the solver takes two degrees of the circle"
        ));
        if let Some(seam) = seat.state.contacts.get(1) {
            let [pressure, diameter, length] = [
                seam.mean_pressure.get::<megapascal>(),
                seam.diameter.get::<millimeter>(),
                seam.length.get::<millimeter>(),
            ];
            self.line(&format!(
                "**   mean pressure {pressure:.4} MPa between liner and housing, on {diameter:.4} mm x {length:.4} mm"
            ));
        }
        if let Some(closing) = &seat.closing {
            let [front, middle, back] = [closing.front, closing.middle, closing.back].map(|at| at.get::<micrometer>());
            let sign = if seat.seat == crate::plan::SeatKind::Housing { "closes" } else { "grows" };
            self.line(&format!(
                "**   the {} {sign} on its diameter by {front:.3} um at the front, {middle:.3} in the middle, {back:.3} at the \
                 back;",
                seat.ring
            ));
            self.line("**     here: twice the displacement x of the set CLOSING");
        }
    }

    fn part(&mut self, set: &str, field: &PartField, (node, element): First) {
        self.line(&format!("*ELEMENT, TYPE=CAX8, ELSET={set}"));
        for (number, nodes) in field.elements.iter().enumerate() {
            let nodes: Vec<String> = nodes.iter().map(|n| (node + n).to_string()).collect();
            self.line(&format!("{}, {}", element + number, nodes.join(", ")));
        }
        self.line(&format!("*MATERIAL, NAME={set}_MATERIAL"));
        self.line("*ELASTIC");
        let (modulus, poisson) = (field.material.modulus.get::<megapascal>(), field.material.poisson);
        self.line(&format!("{modulus}, {poisson}"));
        self.line(&format!("*SOLID SECTION, ELSET={set}, MATERIAL={set}_MATERIAL"));
    }

    fn contact(&mut self, seat: &SectionPlan, number: usize, first: &[First]) {
        let (contact, [inner, outer, law]) = (&seat.field.contacts[number], CONTACTS[number]);
        for (part, name, nodes) in [(number, inner, &contact.inner), (number + 1, outer, &contact.outer)] {
            self.line(&format!("*SURFACE, NAME={name}"));
            for middle in nodes.iter().skip(1).step_by(2) {
                // Every middle of an edge at the seat belongs to one element.
                if let Some((element, side)) = face(&seat.field.parts[part], *middle) {
                    self.line(&format!("{}, S{side}", first[part].1 + element));
                }
            }
        }
        self.line(&format!("*SURFACE INTERACTION, NAME={law}"));
        self.line("*SURFACE BEHAVIOR, PRESSURE-OVERCLOSURE=LINEAR");
        self.line(CONTACT_STIFFNESS);
        self.line(&format!("*CONTACT PAIR, INTERACTION={law}, TYPE=SURFACE TO SURFACE"));
        self.line(&format!("{inner}, {outer}"));
    }

    /// Each pair of nodes stays together across the seam: `u_outer - u_inner = δ`, with δ the half of the interference that both
    /// sizes before fitting leave between them, as the displacement of a node that belongs to nothing.
    fn bond(&mut self, seat: &SectionPlan, number: usize, first: &[First]) {
        let contact = &seat.field.contacts[number];
        let free = 1 + seat.field.parts.iter().map(|part| part.nodes.len()).sum::<usize>();
        self.line("*NODE, NSET=SEAM");
        self.line(&format!("{free}, 0., 0., 0."));
        for (inner, outer) in contact.inner.iter().zip(&contact.outer) {
            self.line("*EQUATION");
            self.line("3");
            let (inner, outer) = (first[number].0 + inner, first[number + 1].0 + outer);
            self.line(&format!("{outer}, 1, 1., {inner}, 1, -1., {free}, 1, -1."));
        }
        self.line("*BOUNDARY");
        self.line(&format!("{free}, 1, 1, {}", mm(seat.interferences[number] * 0.5)));
    }

    fn set(&mut self, name: &str, nodes: &[usize]) {
        self.line(&format!("*NSET, NSET={name}"));
        for node in nodes {
            self.line(&format!("{node},"));
        }
    }

    fn supports(&mut self, seat: &SectionPlan, first: &[First]) {
        let parts = || seat.field.parts.iter().zip(first);
        let held: Vec<usize> =
            parts().flat_map(|(part, from)| part.held.iter().map(move |node| from.0 + node)).collect();
        self.set("HELD", &held);
        let axis: Vec<usize> = parts().flat_map(|(part, from)| on_axis(part).map(move |node| from.0 + node)).collect();
        if !axis.is_empty() {
            self.set("AXIS", &axis);
        }
        self.line("*BOUNDARY");
        self.line("HELD, 2, 2");
        if !axis.is_empty() {
            self.line("AXIS, 1, 1");
        }
    }

    fn step(&mut self, seat: &SectionPlan, first: &[First]) {
        let part = usize::from(seat.seat == crate::plan::SeatKind::Shaft);
        let surface: Vec<usize> = seat.closing_nodes().iter().map(|node| first[part].0 + node).collect();
        if !surface.is_empty() {
            self.set("CLOSING", &surface);
        }
        self.line("*STEP");
        self.line("*STATIC");
        self.line("1., 1.");
        if !surface.is_empty() {
            self.line("*NODE PRINT, NSET=CLOSING");
            self.line("U");
        }
        for (number, [inner, outer, _]) in CONTACTS.iter().enumerate().take(seat.field.contacts.len()) {
            if !is_bonded(seat, number) {
                self.line(&format!("*CONTACT PRINT, SLAVE={inner}, MASTER={outer}"));
                self.line("CF");
            }
        }
        for line in ["*NODE FILE", "U", "*EL FILE", "S", "*END STEP"] {
            self.line(line);
        }
    }
}

fn is_bonded(seat: &SectionPlan, contact: usize) -> bool {
    contact == 1 && seat.seam.as_ref().is_some_and(|seam| seam.bonded)
}

/// The element whose side has this middle, and which of its sides it is, from 1.
fn face(part: &PartField, middle: usize) -> Option<(usize, usize)> {
    let side = |nodes: &[usize; 8]| nodes[4..].iter().position(|node| *node == middle);
    part.elements.iter().enumerate().find_map(|(number, nodes)| Some((number, side(nodes)? + 1)))
}

fn on_axis(part: &PartField) -> impl Iterator<Item = usize> {
    let zero = |node: &Node| node.place.radius <= Length::default();
    part.nodes.iter().enumerate().filter(move |(_, node)| zero(node)).map(|(number, _)| number)
}
