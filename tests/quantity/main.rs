//! What a shop writes is read as it was meant, or refused with the way to write it; what is printed reads back.

mod accepted;
mod exact;
mod print;
mod refused;

#[path = "../checked/mod.rs"]
mod checked;

use checked::units::si;
