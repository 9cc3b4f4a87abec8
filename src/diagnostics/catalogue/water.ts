export const water = {};
