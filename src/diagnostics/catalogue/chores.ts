export const chores = {};
