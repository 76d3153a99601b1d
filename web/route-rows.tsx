export const RouteRows = () => null
