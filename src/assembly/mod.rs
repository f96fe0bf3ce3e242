//! What is put together along the axis, in quantities alone: the seat of a shaft seal, and stacks of parts.

pub mod seal;
pub mod stack;
