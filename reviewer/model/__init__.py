"""The understood plan: named parts, joints, coats, loads, room and stock in real units."""
