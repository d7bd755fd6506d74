/** Which way an element hands on a force: a shaft both ways, a line only while it pulls. */
export type Transmits = "both-ways" | "pull-only"
