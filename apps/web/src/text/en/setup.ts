/** The small set-up screens, and what all of them share. */
export const setup = {
  more: { tokens: 'Access tokens', audit: 'Audit trail' },
  show: { label: 'Shown', active: 'In use', retired: 'No longer in use', all: 'All' },
  state: { active: 'In use', retired: 'No longer in use' },
  name: 'Name',
  change: 'Change',
  changeOf: (name: string) => `Change ${name}`,
  saved: (name: string) => `${name} is saved.`,
  inUse: 'In use',
  inUseHint: 'What is no longer in use stays in the book, and is offered nowhere.',
  wholeBetween: (least: number, most: number) =>
    `Please write a whole number from ${least} to ${most}`,
  aboveZero: 'Must be more than 0',
  optional: 'May be left empty',
};
