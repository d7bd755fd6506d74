/** Which way an element hands on a force: a shaft both ways, a line only while it pulls, a gas spring or a buffer only while it pushes. */
export type Transmits = "both-ways" | "pull-only" | "push-only"
