//! What is drawn: whole numbers only, so that a seed gives the same job on every machine.

use super::material::{CLASS_MATERIALS, ClassMaterial};
use crate::plan::scatter::Random;

/// A source of random choices.
pub(super) struct Draw(Random);

/// A part with its seat: what goes in, of which size and class, into what.
#[derive(Clone, Debug)]
pub(super) struct Pair {
    /// `plug` or `bush`.
    pub(super) part: &'static str,
    pub(super) outside: u32,
    pub(super) bore: u32,
    pub(super) width: u32,
    pub(super) boss: u32,
    pub(super) inner: &'static ClassMaterial,
    pub(super) outer: &'static ClassMaterial,
}

impl Draw {
    pub(super) fn new(seed: u64, stream: u64) -> Self {
        Self(Random::new(seed, stream))
    }

    /// A whole number from 0 up to, and without, `count`.
    fn below(&mut self, count: usize) -> usize {
        ((self.0.even() * count as f64) as usize).min(count.saturating_sub(1))
    }

    pub(super) fn one_of<T: Copy>(&mut self, list: &[T]) -> T {
        list[self.below(list.len())]
    }

    /// From `low` to `high` in steps.
    pub(super) fn stepped(&mut self, low: u32, high: u32, step: u32) -> u32 {
        low + step * self.below(((high - low) / step + 1) as usize) as u32
    }

    /// A part and its seat, in class materials.
    pub(super) fn pair(&mut self) -> Pair {
        let outside = self.stepped(20, 80, 5);
        let part = self.one_of(&["plug", "bush"]);
        Pair {
            part,
            outside,
            bore: outside * self.stepped(50, 75, 5) / 100,
            width: outside * self.stepped(50, 100, 10) / 100,
            boss: outside * self.stepped(150, 220, 10) / 100,
            inner: self.one_of(&[&CLASS_MATERIALS[0], &CLASS_MATERIALS[3], &CLASS_MATERIALS[2]]),
            outer: self.one_of(&[&CLASS_MATERIALS[0], &CLASS_MATERIALS[1], &CLASS_MATERIALS[2]]),
        }
    }

    /// What it is and where, invented.
    pub(super) fn scene(&mut self, part: &str) -> String {
        let what: &[&str] = match part {
            "plug" => &["Core plug", "Dowel plug", "Blanking plug", "Pivot stub"],
            "bush" => &["Pivot bush", "Guide bush", "Lever bush", "Hinge bush"],
            _ => &["Rear bearing", "Idler bearing", "Outboard bearing", "Guide roller bearing"],
        };
        let place = [
            "raw-water pump",
            "hay elevator",
            "cable drum",
            "bench saw",
            "flour sifter",
            "gate winch",
            "rowing trainer",
            "kiln car",
            "wash drum",
            "potato grader",
        ];
        format!("{}, {}", self.one_of(what), self.one_of(&place))
    }
}

impl Pair {
    /// `[bearing]` with its class of size, and `[housing]` with its own.
    pub(super) fn text(&self, title: &str, inner_limits: &str, outer_limits: &str) -> String {
        let (kind, bore) = match self.part {
            "bush" => ("plain bush", format!("bore = \"{} mm\"\n", self.bore)),
            _ => ("solid plug", String::new()),
        };
        format!(
            "title = \"{title}\"\n\n[bearing]\nkind = \"{kind}\"\n{bore}outside = \"{} mm\"\nwidth = \"{} mm\"\n\
             outside_limits = {inner_limits}\nmaterial = {}\n\n[housing]\nbore_limits = {outer_limits}\noutside = \"{} mm\"\n\
             length = \"{} mm\"\nmaterial = {}\n",
            self.outside,
            self.width,
            self.inner.text(),
            self.boss,
            self.width,
            self.outer.text(),
        )
    }
}
