//! The formulas of a hub's wall, plastic from the bore to a radius c and elastic beyond.

use super::LIMIT_ROUNDING;
use crate::mechanics::ring::{CheckedRing, Ring};
use crate::mechanics::seam::compliance;
use uom::si::pressure::pascal;

/// Halvings of an interval after which nothing of it is left in a number of sixteen digits.
const HALVINGS: usize = 60;

/// The hub's wall and what bears on it, plain SI.
pub(super) struct Wall {
    flow: f64,
    /// Outside over bore, k.
    ratio: f64,
    bore: f64,
    modulus: f64,
    poisson: f64,
    /// Growth of the elastic hub's bore, and shrinking of the inner part, for a pressure of one.
    pub(super) hub_gives: f64,
    inner_gives: f64,
    inner: CheckedRing,
}

impl Wall {
    pub(super) fn new(flow: f64, inner: CheckedRing, hub: &CheckedRing, given: &Ring) -> Self {
        let hub_gives = hub.change(1.0, 0.0, hub.inside_radius);
        Self {
            flow,
            ratio: hub.outside_radius / hub.inside_radius,
            bore: 2.0 * hub.inside_radius,
            modulus: given.elastic_modulus.get::<pascal>(),
            poisson: given.poisson,
            hub_gives,
            inner_gives: compliance(&inner, hub) - hub_gives,
            inner,
        }
    }

    pub(super) fn elastic_pressure(&self, interference: f64) -> f64 {
        interference.max(0.0) / (self.hub_gives + self.inner_gives)
    }

    /// Largest stress in the inner part, by Tresca.
    pub(super) fn inner_stress(&self, pressure: f64) -> f64 {
        self.inner.state(0.0, pressure).tresca().get::<pascal>()
    }

    /// ζ at an interference; one while the hub is elastic, `None` beyond the end of the theory.
    pub(super) fn plastic_ratio(&self, interference: f64) -> Option<f64> {
        if interference <= self.interference(1.0) {
            return Some(1.0);
        }
        let last = self.last_ratio();
        let most = self.interference(last);
        // The limit itself, on its way through millimetres, must still be within it.
        let reached = interference <= most * (1.0 + LIMIT_ROUNDING);
        reached.then(|| rise_to(interference.min(most), (1.0, last), |zeta| self.interference(zeta)))
    }

    pub(super) fn pressure(&self, zeta: f64) -> f64 {
        self.flow * (zeta.ln() + 0.5 * (1.0 - (zeta / self.ratio).powi(2)))
    }

    /// Growth of the bore; at ζ = 1 it is the elastic one.
    pub(super) fn growth(&self, zeta: f64) -> f64 {
        self.bore / self.modulus * (self.flow * zeta * zeta - (1.0 - self.poisson) * self.pressure(zeta))
    }

    /// Rises with ζ throughout: `p' = Y (1/ζ - ζ/k²) ≥ 0`, and `2 Y ζ` outweighs `(1 - ν) p'`.
    pub(super) fn interference(&self, zeta: f64) -> f64 {
        self.growth(zeta) + self.inner_gives * self.pressure(zeta)
    }

    /// Where the wall is plastic throughout, or the pressure equals the flow stress (walls with k > e).
    pub(super) fn last_ratio(&self) -> f64 {
        if self.pressure(self.ratio) <= self.flow {
            self.ratio
        } else {
            rise_to(self.flow, (1.0, self.ratio), |zeta| self.pressure(zeta))
        }
    }

    /// What of the growth at ζ stays when the pressure is relieved; `None` when the bore flows back meanwhile.
    pub(super) fn permanent_set(&self, zeta: f64, pressure: f64) -> Option<f64> {
        if zeta <= 1.0 {
            return Some(0.0);
        }
        // The relieved bore has σ_t - σ_r = Y - 2 p k²/(k² - 1), and flows again at -Y.
        let flows_back = pressure * self.square() > self.flow * (self.square() - 1.0);
        (!flows_back).then(|| (self.growth(zeta) - self.hub_gives * pressure).max(0.0))
    }

    pub(super) fn plastic_share(&self, zeta: f64) -> f64 {
        (zeta * zeta - 1.0) / (self.square() - 1.0)
    }

    fn square(&self) -> f64 {
        self.ratio * self.ratio
    }
}

/// Where a rising function comes to `wanted`, between two ends that hold it.
fn rise_to(wanted: f64, (mut low, mut high): (f64, f64), function: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if function(middle) < wanted {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}
