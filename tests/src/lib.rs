//! Outside checks and journeys in the real window; see the files under `tests/`.
