"""The rules, a folder a topic, a file a rule."""
