export const delivery = {};
