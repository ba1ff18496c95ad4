package ohmtrail.circuit;

/** How a device is connected to the run that passes its box. */
public enum DeviceWiring {
  /** The device's own terminals carry the run onward. */
  FEED_THROUGH,
  /** A splice carries the run onward and the device hangs off it on a short tail. */
  PIGTAIL
}
