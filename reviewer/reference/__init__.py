"""Facts with their sources: species, panels, sections, fasteners, finishes, glue, loads, limits."""
