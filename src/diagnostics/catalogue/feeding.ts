export const feeding = {};
