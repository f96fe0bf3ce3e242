//! What a material's strength is held against.

use crate::mechanics::Strength;
use crate::stock::Material;

/// A brittle material breaks by its largest tension, any other yields.
pub(super) fn strength(material: &Material) -> Strength {
    let strength = material.strength();
    if strength.kind.is_brittle() { Strength::brittle(strength.value) } else { Strength::ductile(strength.value) }
}
