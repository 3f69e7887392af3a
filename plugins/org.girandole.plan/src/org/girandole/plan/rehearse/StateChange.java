package org.girandole.plan.rehearse;

/** From this night time on, microseconds, the controller that fires says this. */
public record StateChange(long atUs, ControllerState state) {
}
