use super::balance::{Mode, Pair};
use super::path::{Path, Step};
use uom::si::energy::joule;
use uom::si::f64::Energy;

/// Abscissae (from -1 to 1) and weights of Gauss's rule with four points, exact to the seventh power.
/// **Source**: M. Abramowitz, I. A. Stegun, "Handbook of Mathematical Functions", table 25.4 (from memory).
const GAUSS: [(f64, f64); 4] = [
    (-0.861_136_311_594_053, 0.347_854_845_137_454),
    (-0.339_981_043_584_856, 0.652_145_154_862_546),
    (0.339_981_043_584_856, 0.652_145_154_862_546),
    (0.861_136_311_594_053, 0.347_854_845_137_454),
];

/// Where the heat of an insertion went, from its start to its end.
///
/// The heat taken up comes from the heat capacities and the temperatures at the two ends alone; the heat passed and lost
/// is summed along the way. So `inner + outer + to_shop = 0` and `inner + to_shop of the inner = through_joint` check
/// the whole path: the first to 0.1 % of the largest of them, the second to 0.3 %.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatAccount {
    /// Taken up by the inner part (negative when it cooled).
    pub inner: Energy,
    /// Taken up by the outer part.
    pub outer: Energy,
    /// Passed from the outer to the inner part through the joint.
    pub through_joint: Energy,
    /// Given to the shop by the inner part.
    pub inner_to_shop: Energy,
    /// Given to the shop by the outer part.
    pub outer_to_shop: Energy,
}

impl HeatAccount {
    pub(super) fn of(pair: &Pair, path: &Path) -> Self {
        let [inner, outer] = pair.heat_between(&pair.starts(), &path.end().1);
        let flows = path.steps().iter().map(|step| flows(pair, step));
        let [joint, from_inner, from_outer] =
            flows.fold([0.0; 3], |sum, flow| [sum[0] + flow[0], sum[1] + flow[1], sum[2] + flow[2]]);
        Self {
            inner: Energy::new::<joule>(inner),
            outer: Energy::new::<joule>(outer),
            through_joint: Energy::new::<joule>(joint),
            inner_to_shop: Energy::new::<joule>(from_inner),
            outer_to_shop: Energy::new::<joule>(from_outer),
        }
    }
}

/// Heat through the joint and from each part to the shop during a step, J.
fn flows(pair: &Pair, step: &Step) -> [f64; 3] {
    let mut sums = [0.0; 3];
    for (x, weight) in GAUSS {
        let t = step.at(0.5 * (1.0 + x));
        let across = match step.mode {
            Mode::Together => pair.through_joint_together(&t),
            mode => pair.through_joint(&t, mode == Mode::Gripped),
        };
        let powers = [across, pair.loss(0, t[0]), pair.loss(1, t[1])];
        for (sum, power) in sums.iter_mut().zip(powers) {
            *sum += 0.5 * weight * step.width * power;
        }
    }
    sums
}
