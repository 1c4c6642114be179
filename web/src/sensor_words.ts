// The texts of the place 'What we know of the sensor' that do not come from the server.

export const sensorWords = {
  loading: "Reading what is known of the sensors …",
  of: (name: string) => `What we know of the sensor: ${name}`,
  wears: "Each wear",
  wearTable: "How long each wear lasted, and how it ended",
  wearColumns: ["wear", "began", "lasted", "how it ended"],
  howEnded: "How a wear ended is told in the diary, such as “sensor fell off”.",
  diary: "Write it in the diary",
  annex: "Pairs by zone of the error grid",
  annexNote: "Letters of the consensus grid for type 2: the further from A, the more a wrong reading could mislead.",
  annexColumns: ["zone", "pairs"],
  supplies: "Supplies",
  supplyTable: "What was bought, used and is left",
  supplyColumns: ["what", "bought", "used", "left"],
  sensors: "Sensors",
  sessions: "Sessions",
  change: "Change it under “Who is this”",
  noReadings: "There is no reading of this client yet: nothing is known of their sensors.",
};
