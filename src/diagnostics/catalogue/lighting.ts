export const lighting = {};
