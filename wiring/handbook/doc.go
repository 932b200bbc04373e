// Package handbook holds what an electrician looks up: copper and its resistance, how
// much current a conductor may carry, fuses, studs and lugs, cords, battery packs, and the
// limits that rules compare against.
//
// Figures come in two kinds. Laws are functions: the gauge law, resistance, voltage drop,
// heating. Tables are embedded as CSV files under tables, each with its source in its
// first line; [Default] loads them into a [Tables], whose methods look things up. A shop
// that has better figures replaces a table with [Tables.With].
//
// Every table and law names its source, and says how far to trust it: read (from the
// source's text or a public quotation of it), memory (common knowledge of the trade),
// computed, or our own choice. [Tables.Sources] lists them all. A figure from memory is to
// be printed with "follow the maker". Boat and aircraft rules do not bind a cart: they are
// yardsticks.
//
// Lookups between the rows of a table never guess upwards: they take the next row on the
// safe side and say so, or return an error that says what the table has.
package handbook
