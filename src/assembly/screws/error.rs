use crate::mechanics::MechanicsError;
use crate::quantity::ValueError;
use thiserror::Error;

/// Why a question about screws has no answer.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum ScrewsError {
    /// A number that cannot be taken.
    #[error(transparent)]
    Value(#[from] ValueError),
    /// The balance on the thread has no answer.
    #[error(transparent)]
    Mechanics(#[from] MechanicsError),
}
