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
        lines.part(part, field, first[part]);
    }
    lines.contact(seat, &first);
    lines.supports(seat, &first);
    lines.step(seat, &first);
    lines.text
}

/// Number of the first node and of the first element of each part.
fn first_numbers(seat: &SectionPlan) -> [(usize, usize); 2] {
    let inner = &seat.field.parts[0];
    [(1, 1), (1 + inner.nodes.len(), 1 + inner.elements.len())]
}

const SETS: [&str; 2] = ["INNER", "OUTER"];

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
        let contact = &seat.state.contacts[0];
        let (diameter, length) = (contact.diameter.get::<millimeter>(), contact.length.get::<millimeter>());
        self.line("** What seatwise computes, to compare:");
        let pressure = contact.mean_pressure.get::<megapascal>();
        self.line(&format!("**   mean pressure {pressure:.4} MPa; here: total force x of the contact over"));
        self.line(&format!(
            "**     {diameter:.4} mm x {length:.4} mm x sin(1 deg), as the solver takes two degrees of the circle"
        ));
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

    fn part(&mut self, part: usize, field: &PartField, (node, element): (usize, usize)) {
        let set = SETS[part];
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

    fn contact(&mut self, seat: &SectionPlan, first: &[(usize, usize); 2]) {
        let contact = &seat.field.contacts[0];
        let sides = [("INNER_SEAT", &contact.inner), ("OUTER_SEAT", &contact.outer)];
        for (part, (name, nodes)) in sides.into_iter().enumerate() {
            self.line(&format!("*SURFACE, NAME={name}"));
            for middle in nodes.iter().skip(1).step_by(2) {
                // Every middle of an edge at the seat belongs to one element.
                if let Some((element, side)) = face(&seat.field.parts[part], *middle) {
                    self.line(&format!("{}, S{side}", first[part].1 + element));
                }
            }
        }
        self.line("*SURFACE INTERACTION, NAME=SEAT");
        self.line("*SURFACE BEHAVIOR, PRESSURE-OVERCLOSURE=LINEAR");
        self.line(CONTACT_STIFFNESS);
        self.line("*CONTACT PAIR, INTERACTION=SEAT, TYPE=SURFACE TO SURFACE");
        self.line("INNER_SEAT, OUTER_SEAT");
    }

    fn set(&mut self, name: &str, nodes: &[usize]) {
        self.line(&format!("*NSET, NSET={name}"));
        for node in nodes {
            self.line(&format!("{node},"));
        }
    }

    fn supports(&mut self, seat: &SectionPlan, first: &[(usize, usize); 2]) {
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

    fn step(&mut self, seat: &SectionPlan, first: &[(usize, usize); 2]) {
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
        for line in [
            "*CONTACT PRINT, SLAVE=INNER_SEAT, MASTER=OUTER_SEAT",
            "CF",
            "*NODE FILE",
            "U",
            "*EL FILE",
            "S",
            "*END STEP",
        ] {
            self.line(line);
        }
    }
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
