"""`pytest tests/sync --hypothesis-profile soak` plays for an hour or so."""

from hypothesis import HealthCheck, settings

settings.register_profile(
    "soak",
    max_examples=5000,
    stateful_step_count=80,
    deadline=None,
    print_blob=True,
    suppress_health_check=list(HealthCheck),
)
