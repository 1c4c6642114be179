// The texts of 'How we write'.

export const writingWords = {
  link: "How we write dates and times",
  title: "How we write",
  loading: "Reading how this practice writes …",
  lead: "For every client: on this page, on papers and by command. What is kept doesn't change.",
  dates: "Dates",
  datesNamed: { "day first": "Day first", "month first": "Month first" } as Record<string, string>,
  hours: "Times of day",
  hoursNamed: { "24": "24 hours", "12": "12 hours" } as Record<string, string>,
  glucose: "Glucose of a new client",
  glucoseHint: "Until the client is asked. Each client's own unit stands in 'Who is this'.",
  such: (name: string, sample: string) => `${name}: ${sample}`,
  kept: "Kept. Everything is written so from now on.",
  undo: "Undo",
  undone: "Undone.",
};
