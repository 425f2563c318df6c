export const any = 1;
