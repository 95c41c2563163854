/** English words: what the cost engine finds while it counts hours, machines and materials. */
export const costs = {
  'packet.hours.minimum':
    'Hours of a call below its minimum are paid up to it: "2 h + 1 h (2 h < 3 h)" is two hours worked and one more up to the minimum of three.',
  'packet.hours.step':
    'Hours are counted in steps: "1 h 7 min + 8 min (1 h 7 min → 5 × 15 min)" is the time worked and what brings it to five steps.',

  'problem.working-hours-end-before-start':
    'These working hours end before they start. Give a shift past midnight as two: up to 24:00, and from 00:00 on the next day.',
  'problem.operator-in-machine-rate':
    '{time} that worker {workerId} spent operating {machineCode} are not billed as labor: the rate of the machine holds its operator.',
  'problem.operator-not-named':
    'The rate of {machineCode} holds its operator, and the record does not name one. His hours may be billed twice: name the operator.',
  'problem.fuel-in-machine-rate':
    '{partNumber} is not billed: it is fuel, and the rate of {machines} holds it.',
  'problem.standby-under-half-day':
    '{machineCode} stood by for {time} on {dates}, when it was in use for no more than half of a working day of {hours} h. That is not billed.',
  'problem.standby-in-day-rate':
    '{machineCode} stood by for {time} on days that are billed whole. That is not billed again.',
  'problem.week-hours-twice':
    'Two records differ in the hours that worker {workerId} had in the week from {weekStartsOn}. The fewer, {hours} h, are counted.',
  'problem.week-hours-other-week':
    'The hours of worker {workerId} are given for a week from {weekStartsOn}, on which no week of the pay rules starts. They are not counted: give them from the day on which the week starts.',
} as const;
