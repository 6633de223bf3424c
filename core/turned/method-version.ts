/**
 * Version of the way a turned sitting is joined from its measured views. Raise it when the same views would give other
 * numbers or words, so that stored plans can be told apart and joined anew.
 */
export const TURNED_METHOD_VERSION = '4';
