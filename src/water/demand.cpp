#include "water/demand.hpp"

#include <boost/math/distributions/binomial.hpp>

namespace headgate::water {
namespace {

// long double differs between platforms.
using Policy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
using Binomial = boost::math::binomial_distribution<double, Policy>;

// A share that only rounding keeps from the percentile has reached it.
constexpr double last_bits = 1e-12;

}  // namespace

double binomial_demand(double count, double probability, double percentile) {
  const Binomial running(count, probability);
  double least = 0.0;
  double most = count;
  while (least < most) {
    const double middle = static_cast<double>(static_cast<long>((least + most) / 2.0));
    if (cdf(running, middle) + last_bits >= percentile) {
      most = middle;
    } else {
      least = middle + 1.0;
    }
  }
  return least;
}

}  // namespace headgate::water
