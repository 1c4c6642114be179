// The texts of the client's view that do not come from the server: plain, without the coach's terms.

export const clientViewWords = {
  turn: "Turn the screen to the client",
  back: "Turn the screen back",
  loading: "One moment …",
  none: "There is nothing to show yet.",
  agreed: "What we agreed",
  when: "When",
  where: "Where",
  often: "How often",
  ifNot: "If it can't be done",
  today: (arm: string) => `Today: ${arm}.`,
  trial: "What we try out",
  day: "Your day",
  days: (number: number) => `Your last ${number} days`,
  more: "To look at together",
};
