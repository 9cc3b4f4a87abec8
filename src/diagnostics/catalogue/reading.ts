export const reading = {};
