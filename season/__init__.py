"""A season in the shop, simulated: guitars built day by day in invented air, with everything that goes wrong in one."""
