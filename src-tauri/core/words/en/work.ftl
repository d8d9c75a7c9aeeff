# What the work itself says: steps, figures, history, errors.

spoken-inches = { $whole ->
    [one] { $whole } inch
   *[other] { $whole } inches
}
